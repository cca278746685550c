export interface Surroundings {
  /** As Node names it. */
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Whether a person reads what is printed. */
  readonly isTerminal: boolean;
}

export function hasDisplay(surroundings: Surroundings): boolean;
export function canShowDesktop(surroundings: Surroundings): boolean;
export function browserCommand(surroundings: Surroundings, url: string): readonly string[] | undefined;
