import { describe, expect, test } from 'vitest';
import { codeOf, toDiagnostic } from '../../../extension/features/diagnostic.ts';
import { forEditor } from '../../support/editorRequests.ts';
import { Diagnostic, DiagnosticSeverity, Range, TextDocument } from '../../support/vscode.ts';
import type { Mark } from '../../../src/outputs/marks.ts';

const TEXT = 'format: 1\r\ntitle: 🔧x\r\n';
const document = forEditor(new TextDocument('file:///a.throttle.yaml', 'throttle-linkage', TEXT));

const PROBLEM = { code: 'wrong-value', severity: 'error', span: { start: 0, end: 6 }, message: 'no' } as const;

describe('a mark in the editor', () => {
  test('stands at its characters, counted in UTF-16, on the line after a CRLF too', () => {
    const span = { start: TEXT.indexOf('x'), end: TEXT.indexOf('x') + 1 };
    expect(toDiagnostic(document, { ...PROBLEM, span }).range).toEqual(new Range(1, 9, 1, 10));
  });

  test('keeps its code and says where it is from', () => {
    const diagnostic = toDiagnostic(document, PROBLEM);
    expect([codeOf(diagnostic), diagnostic.source]).toEqual(['wrong-value', 'pedal-to-plate']);
  });

  test('links its code to its page, which needs no network', () => {
    const { code } = toDiagnostic(document, PROBLEM);
    const target = typeof code === 'object' ? decodeURIComponent(code.target.toString()) : undefined;
    expect(target).toBe('command:pedalToPlate.openCodePage?["wrong-value"]');
  });

  test('says the cure after the cause, and only the cause where no cure is known', () => {
    expect(toDiagnostic(document, PROBLEM).message).toBe('no');
    expect(toDiagnostic(document, { ...PROBLEM, cure: 'Write `format`' }).message).toBe('no. Write `format`.');
    expect(toDiagnostic(document, { ...PROBLEM, cure: 'Did you mean `format`?' }).message).toBe('no. Did you mean `format`?');
  });

  test.each([
    ['error', DiagnosticSeverity.Error],
    ['warning', DiagnosticSeverity.Warning],
    ['note', DiagnosticSeverity.Information],
  ] as const)('with severity %s is shown as such', (severity, shown) => {
    expect(toDiagnostic(document, { ...PROBLEM, severity } as Mark).severity).toBe(shown);
  });

  test('points to the other places that explain it', () => {
    const related = [{ span: { start: 11, end: 16 }, message: 'first written here' }];
    const { relatedInformation } = toDiagnostic(document, { ...PROBLEM, related });
    expect(relatedInformation?.map(({ message, location }) => [message, location.range])).toEqual([
      ['first written here', new Range(1, 0, 1, 5)],
    ]);
  });
});

test('a diagnostic of another extension has no code of ours', () => {
  const other = new Diagnostic(new Range(0, 0, 0, 1), 'no', 0);
  other.source = 'spelling';
  other.code = 'wrong-value';
  expect(codeOf(other as never)).toBeUndefined();
});
