import { Injectable, type PipeTransform } from '@nestjs/common';
import { isPlain } from '../http/plain-text.js';
import { Problem } from '../problem.js';

const LONGEST = 60;

/** A batch out of an address. What no batch can be called is nothing that can be found. */
@Injectable()
export class BatchPipe implements PipeTransform<string, string> {
  /** @throws Problem `not_found`. */
  transform(value: string): string {
    const batch = value.trim();
    if (batch === '' || batch.length > LONGEST || !isPlain(batch, { lines: false }))
      throw new Problem('not_found', 'No batch is called that.');
    return batch;
  }
}
