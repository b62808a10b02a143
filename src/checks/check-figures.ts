import { applyDecorators } from '@nestjs/common';
import { ApiPropertyOptional } from '@nestjs/swagger';
import { ValidateBy } from 'class-validator';
import { isPlain } from '../http/plain-text.js';
import { FIGURE_UNITS } from '../rules/checks/checklist.js';

const MOST_FIGURES = 20;
const MOST_SIGNS = 20;
const NAME = /^[a-z][A-Za-z0-9]{0,39}$/;

/** A field of figures by name, each decimal text with its unit. What they mean is for the checklist to judge. */
export function CheckFigures(): PropertyDecorator {
  const message = `give at most ${MOST_FIGURES} figures by name, each as { value, unit }`;
  return applyDecorators(
    ApiPropertyOptional({
      type: 'object',
      additionalProperties: {
        type: 'object',
        required: ['value', 'unit'],
        properties: { value: { type: 'string' }, unit: { type: 'string', enum: [...FIGURE_UNITS] } },
      },
      example: { outerLinkMm: { value: '3.2', unit: 'mm' } },
    }),
    ValidateBy({ name: 'checkFigures', validator: { validate: areFigures, defaultMessage: () => message } }),
  );
}

function areFigures(value: unknown): boolean {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const entries = Object.entries(value);
  return (
    entries.length <= MOST_FIGURES && entries.every(([name, figure]) => NAME.test(name) && isFigure(figure))
  );
}

function isFigure(figure: unknown): boolean {
  if (typeof figure !== 'object' || figure === null || Object.keys(figure).length !== 2) return false;
  const value: unknown = Reflect.get(figure, 'value');
  const unit: unknown = Reflect.get(figure, 'unit');
  const readable =
    typeof value === 'string' && value.length <= MOST_SIGNS && isPlain(value, { lines: false });
  return readable && FIGURE_UNITS.some((known) => known === unit);
}
