/** Stand-ins for places in a text, and for addresses. */

export class Position {
  readonly line: number;
  readonly character: number;
  constructor(line: number, character: number) {
    this.line = line;
    this.character = character;
  }
  isEqual(other: Position): boolean {
    return this.line === other.line && this.character === other.character;
  }
}

export class Range {
  readonly start: Position;
  readonly end: Position;
  constructor(start: Position, end: Position);
  constructor(startLine: number, startCharacter: number, endLine: number, endCharacter: number);
  constructor(start: Position | number, end: Position | number, endLine = 0, endCharacter = 0) {
    this.start = typeof start === 'number' ? new Position(start, end as number) : start;
    this.end = typeof end === 'number' ? new Position(endLine, endCharacter) : end;
  }
  isEqual(other: Range): boolean {
    return this.start.isEqual(other.start) && this.end.isEqual(other.end);
  }
}

export class Selection extends Range {
  get active(): Position {
    return this.end;
  }
}

export class Location {
  readonly uri: unknown;
  readonly range: Range;
  constructor(uri: unknown, range: Range) {
    this.uri = uri;
    this.range = range;
  }
}

/** Of an address only what the extension reads: its text is kept as it was given. */
export class Uri {
  private readonly address: string;
  readonly scheme: string;
  readonly authority: string;
  readonly path: string;
  readonly query: string;
  private constructor(address: string) {
    const [, scheme = '', authority = '', path = '', query = ''] = /^([a-z-]+):(?:\/\/([^/]*))?([^?#]*)\??([^#]*)/.exec(address) ?? [];
    this.address = address;
    this.scheme = scheme;
    this.authority = authority;
    this.path = path;
    this.query = query;
  }
  get fsPath(): string {
    return this.path;
  }
  static parse(address: string): Uri {
    return new Uri(address);
  }
  static joinPath(base: Uri, ...segments: string[]): Uri {
    const joined: string[] = [];
    for (const each of [base.path, ...segments].join('/').split('/')) {
      if (each === '..') joined.pop();
      else joined.push(each);
    }
    return base.with({ path: joined.join('/') });
  }
  with({ scheme = this.scheme, path = this.path, query = this.query }: { scheme?: string; path?: string; query?: string }): Uri {
    const [before = ''] = /^[a-z-]+:(?:\/\/[^/]*)?/.exec(this.address) ?? [];
    return new Uri(`${before.replace(/^[a-z-]+/, scheme)}${path}${query === '' ? '' : `?${query}`}`);
  }
  toString(): string {
    return this.address;
  }
}
