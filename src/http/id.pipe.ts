import { Injectable, type PipeTransform } from '@nestjs/common';
import { Problem } from '../problem.js';

const LARGEST_ID = 2_147_483_647;

/** A row's number out of an address. What no row can be numbered is nothing that can be found. */
@Injectable()
export class IdPipe implements PipeTransform<string, number> {
  /** @throws Problem `not_found`. */
  transform(value: string): number {
    const id = /^\d{1,10}$/.test(value) ? Number(value) : 0;
    if (id < 1 || id > LARGEST_ID)
      throw new Problem('not_found', `'${value}' is not the number of anything.`);
    return id;
  }
}
