import type { TextDocument as EditorDocument } from 'vscode';
import { describe, expect, test } from 'vitest';
import { toDiagnostic } from '../../extension/problems.ts';
import { DiagnosticSeverity, Position, Range, TextDocument } from '../support/vscode.ts';

const TEXT = 'format: 1\r\ntitle: x\r\n';

function documentOf(text: string): EditorDocument {
  return new TextDocument('file:///a.throttle.yaml', 'throttle-linkage', text) as unknown as EditorDocument;
}

describe('a remark in the editor', () => {
  test('stands at its characters, on the line after a CRLF too', () => {
    const span = { start: TEXT.indexOf('x'), end: TEXT.indexOf('x') + 1 };
    const diagnostic = toDiagnostic(documentOf(TEXT), { code: 'wrong-value', severity: 'error', span, message: 'no' });
    expect(diagnostic.range).toEqual(new Range(new Position(1, 7), new Position(1, 8)));
  });

  test('keeps its code and says where it is from', () => {
    const span = { start: 0, end: 6 };
    const diagnostic = toDiagnostic(documentOf(TEXT), { code: 'unknown-key', severity: 'error', span, message: 'no' });
    expect([diagnostic.code, diagnostic.source]).toEqual(['unknown-key', 'pedal-to-plate']);
  });

  test('says the cure after the cause, and only the cause where no cure is known', () => {
    const remark = { code: 'unknown-key', severity: 'error', span: { start: 0, end: 6 }, message: '“frmat” is no key' } as const;
    expect(toDiagnostic(documentOf(TEXT), remark).message).toBe('“frmat” is no key');
    expect(toDiagnostic(documentOf(TEXT), { ...remark, cure: 'Write “format”' }).message).toBe('“frmat” is no key. Write “format”.');
  });

  test.each([
    ['error', DiagnosticSeverity.Error],
    ['warning', DiagnosticSeverity.Warning],
    ['note', DiagnosticSeverity.Information],
  ] as const)('with severity %s is shown as such', (severity, shown) => {
    expect(toDiagnostic(documentOf(TEXT), { code: 'c', severity, span: { start: 0, end: 1 }, message: 'm' }).severity).toBe(shown);
  });

  test('points to the other places that explain it', () => {
    const related = [{ span: { start: 11, end: 16 }, message: 'first written here' }];
    const diagnostic = toDiagnostic(documentOf(TEXT), { code: 'c', severity: 'error', span: { start: 0, end: 1 }, message: 'm', related });
    expect(diagnostic.relatedInformation?.map((other) => [other.message, other.location.range.start.line])).toEqual([
      ['first written here', 1],
    ]);
  });
});
