/** Facts, and the figures of the parts along the load path, in words. */
import type { Fact } from '../findings/finding.ts';
import type { PartFigure } from '../findings/part.ts';
import { figureText, NO_VALUE, percentText, travelText } from './figure.ts';
import { printable } from './paint.ts';

/** The fact's figure and where on the pedal it holds, or why there is none; behind it what guidance says. */
export function factText(fact: Fact): string {
  return withGuidance(told(fact), fact);
}

/** @param text of the fact's figure */
export function withGuidance(text: string, { figure, guidance }: Fact): string {
  return figure === undefined || guidance === undefined ? text : `${text} (guidance: ${guidance})`;
}

function told(fact: Fact): string {
  const { label, figure, travel, why } = fact;
  if (travel === undefined) return figure === undefined ? (why ?? NO_VALUE) : figureText(figure);
  if (figure === undefined) return why ?? percentText(travel);
  if (isTravel(fact)) return percentText(travel);
  // The fact may be told of a travel that its label names.
  return label.endsWith(travelText(travel)) ? figureText(figure) : `${figureText(figure)} ${travelText(travel)}`;
}

/** Whether the fact is a pedal travel itself: its figure is then a fraction. */
export function isTravel({ figure, travel }: Fact): boolean {
  return figure?.dimension === 'number' && figure.value === travel;
}

/** E.g. `least transmission angle 51.2° at 98.1 %`. */
export function partFigureText({ label, figure, text, travel }: PartFigure): string {
  const value = figure === undefined ? (text ?? NO_VALUE) : [figureText(figure), text].filter((word) => word !== undefined).join(' ');
  return printable([label, value, ...(travel === undefined ? [] : [`at ${percentText(travel)}`])].filter((word) => word !== '').join(' '));
}
