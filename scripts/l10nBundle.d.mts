/** Throws where a call gives something else than a text. @param sources by path, what stands in each @param words those of the view, in groups @returns the bundle's text */
export function l10nBundle(sources: Readonly<Record<string, string>>, words?: object): string;
