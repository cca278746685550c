export function openOnDesktop(example: string, env: Readonly<Record<string, string | undefined>>): boolean;
