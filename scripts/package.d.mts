/** Bytes; what the package may have at most. */
export const LARGEST_PACKAGE: number;

/**
 * @param file where to; by default in `build/`, named by the version
 * @returns path of the package
 */
export function makePackage(file?: string): Promise<string>;

/** Links to files of the clone are replaced by the files' names, and pictures of the clone that are paragraphs are left out. */
export function withoutDeadLinks(markdown: string): string;

/** Whether there is a warning in what was printed. */
export function warns(printed: string): boolean;
