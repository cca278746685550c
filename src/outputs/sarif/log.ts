/**
 * As much of SARIF 2.1.0 (OASIS Standard with Errata 01, 28 August 2023) as a check writes, as types. Section numbers in this folder are
 * those of the standard.
 */

export interface SarifLog {
  readonly version: '2.1.0';
  readonly $schema: string;
  readonly runs: readonly SarifRun[];
}

export interface SarifRun {
  readonly tool: { readonly driver: SarifDriver };
  readonly invocations: readonly SarifInvocation[];
  readonly artifacts: readonly SarifArtifact[];
  readonly results: readonly SarifResult[];
  readonly defaultEncoding: string;
  readonly columnKind: 'utf16CodeUnits';
  readonly newlineSequences: readonly string[];
}

export interface SarifDriver {
  readonly name: string;
  readonly version: string;
  readonly fullDescription: SarifText;
  readonly rules: readonly SarifDescriptor[];
  readonly notifications: readonly SarifDescriptor[];
}

/** Of a rule, or of a kind of notification. */
export interface SarifDescriptor {
  readonly id: string;
  /** One word, in capitals where a word begins. */
  readonly name: string;
  readonly shortDescription: SarifText;
  readonly help?: SarifText;
}

export interface SarifText {
  readonly text: string;
  readonly markdown?: string;
}

export interface SarifInvocation {
  readonly executionSuccessful: boolean;
  readonly exitCode: number;
  readonly toolExecutionNotifications: readonly SarifNotification[];
}

export interface SarifNotification {
  readonly descriptor: { readonly id: string; readonly index: number };
  readonly level: 'error' | 'note';
  readonly message: SarifText;
  readonly locations: readonly SarifLocation[];
}

export interface SarifArtifact {
  readonly location: SarifArtifactLocation;
  readonly roles: readonly 'analysisTarget'[];
  readonly contents?: SarifText;
}

export interface SarifArtifactLocation {
  readonly uri: string;
  readonly index: number;
  readonly description?: SarifText;
}

export interface SarifLocation {
  readonly id?: number;
  readonly physicalLocation: { readonly artifactLocation: SarifArtifactLocation; readonly region?: SarifRegion };
  readonly logicalLocations?: readonly { readonly name: string }[];
  readonly message?: SarifText;
}

/** Lines and columns from 1, the offset from 0; the end column is the first behind. */
export interface SarifRegion {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly charOffset: number;
  readonly charLength: number;
}

export interface SarifResult {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: 'error' | 'warning' | 'note';
  readonly message: SarifText;
  readonly locations: readonly SarifLocation[];
  readonly relatedLocations?: readonly SarifLocation[];
  readonly fixes?: readonly SarifFix[];
  readonly properties?: Readonly<Record<string, unknown>>;
}

export interface SarifFix {
  readonly description: SarifText;
  readonly artifactChanges: readonly {
    readonly artifactLocation: SarifArtifactLocation;
    readonly replacements: readonly { readonly deletedRegion: SarifRegion; readonly insertedContent?: SarifText }[];
  }[];
}
