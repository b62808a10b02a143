import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { readInput } from './input.js';

/** Checks every body and query against the class its handler declares. Plain `object` bodies are the page forms, read by their handlers. */
@Injectable()
export class InputPipe implements PipeTransform {
  async transform(value: unknown, { metatype, type }: ArgumentMetadata): Promise<unknown> {
    if ((type !== 'body' && type !== 'query') || !isDto(metatype)) return value;
    return readInput(metatype, value);
  }
}

function isDto(metatype: ArgumentMetadata['metatype']): metatype is new () => object {
  return metatype !== undefined && !PLAIN_TYPES.has(metatype);
}

const PLAIN_TYPES = new Set<unknown>([Object, String, Number, Boolean, Array]);
