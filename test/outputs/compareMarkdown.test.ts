import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import { compareMarkdown } from '../../src/outputs/compareMarkdown.ts';
import { markdownText } from '../../src/outputs/markdown.ts';
import { BASE, edited } from '../studies/compareFiles.ts';

const NAMES = { was: 'old.yaml', is: 'new.yaml' };

describe('a comparison as Markdown', () => {
  const text = compareMarkdown(compareTexts(BASE, edited(['open: 68 deg', 'open: 66 deg'], ['max: 100 mm', 'max: 90 mm'])), NAMES);

  it('begins with the names and the verdict in words', () => {
    const [title, , verdict] = text.split('\n');
    expect(title).toBe('## old.yaml → new.yaml');
    expect(verdict).toBe('**worse: 1 new error, 1 requirement that was passed and is not now**');
  });

  it('says that there is no difference', () => {
    expect(compareMarkdown(compareTexts(BASE, BASE), NAMES)).toBe(
      `## old.yaml → new.yaml\n\n**no difference**\n\n> **Caution.** ${markdownText(CAUTION)}\n`,
    );
  });

  it('has tables whose rows have as many cells as their heads', () => {
    const tables = text.split(/\n\n/).filter((block) => block.startsWith('|'));
    expect(tables.length).toBeGreaterThanOrEqual(3);
    for (const table of tables) {
      const counts = table
        .split('\n')
        .filter((line) => line.startsWith('|'))
        .map((line) => line.split('|').length);
      expect(new Set(counts).size).toBe(1);
    }
  });

  it('shows the first figures, and puts further ones and the curves where they can be opened', () => {
    const many = compareMarkdown(compareTexts(BASE, edited(['reach: 30 mm', 'reach: 31 mm'], ['open: 68 deg', 'open: 60 deg'])), NAMES);
    const [, figures = '', more = ''] =
      /### Figures\n\n((?:\|.*\n)+)\n<details>\n<summary>\d+ more figures<\/summary>\n\n((?:\|.*\n)+)\n<\/details>/.exec(many) ?? [];
    expect(figures.trim().split('\n')).toHaveLength(2 + 12);
    expect(more.trim().split('\n').length).toBeGreaterThan(2);
    expect(figures).toContain('full opening');
    expect(more).toContain('drive angle');
    expect(text).toContain('### Figures');
    expect(many).toContain('<summary>Curves</summary>');
    expect(many.match(/<details>/g)).toHaveLength(many.match(/<\/details>/g)?.length ?? 0);
  });

  it('carries the caution', () => {
    expect(text).toContain(`> **Caution.** ${markdownText(CAUTION)}`);
  });

  it('lets nothing of a file or its name be taken for markup', () => {
    const evil = BASE.replace('Two barrels', '"| <img src=x> [a](b) @team #77 `code` **bold** https://x.y ![p](q)"').replace(
      '  opens fully:',
      '  "a | <b> `c` @d\\nnew line":',
    );
    const shown = compareMarkdown(compareTexts(BASE, evil), { was: '<a>|`x`.yaml', is: '@me/[b](c).yaml' });
    for (const mark of ['<img', '<b>', '<a>', '[a](', '[b](', '@team', '@me', '@d', '#77', '**bold', '![', 'https://x', '`'])
      expect(shown).not.toContain(mark);
    for (const table of shown.split(/\n\n/).filter((block) => block.startsWith('|'))) {
      for (const line of table.split('\n')) expect(line.startsWith('|') && line.endsWith('|')).toBe(true);
    }
  });
});
