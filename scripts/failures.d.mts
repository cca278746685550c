export interface Failure {
  /** Of a test in full, or what else failed. */
  readonly name: string;
  /** Lines; empty where there is nothing to say. */
  readonly reason: readonly string[];
}

/** As far as it is looked at. */
export interface Report {
  readonly testResults: readonly ReportedFile[];
}

export interface ReportedFile {
  readonly name: string;
  readonly status: string;
  readonly message: string;
  readonly assertionResults: readonly {
    readonly status: string;
    readonly ancestorTitles: readonly string[];
    readonly title: string;
    readonly failureMessages: readonly string[];
  }[];
}

/** What failed by Vitest's JSON report; undefined stands for no report at all. `root` ends in a separator. */
export function failuresOfReport(report: Report | undefined, root: string): readonly Failure[];

/** Whether a file failed, and none of its tests did. */
export function isBroken(file: ReportedFile): boolean;

export interface FailedStep {
  readonly step: string;
  readonly failures: readonly Failure[];
  /** What it had to say, where it names no failures. */
  readonly printed?: readonly string[];
}

/** The lines that tell what failed; empty where nothing did. Where there is much of it, reasons are cut before names are. */
export function toldAgain(steps: readonly FailedStep[]): readonly string[];

/** Lines of a text that say something, without colours. */
export function linesOf(text: string | undefined): readonly string[];
