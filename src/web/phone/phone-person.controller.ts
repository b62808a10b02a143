import { Controller, Get } from '@nestjs/common';
import { Me, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import { PhonePersonView } from './phone-person.dto.js';

@Controller('api/phone')
export class PhonePersonController {
  /** Who is signed in. A phone asks before it sends what waits: a check goes out under its maker's name only. */
  @SignedIn()
  @Get('me')
  me(@Me() { id, name }: Actor): PhonePersonView {
    if (id === null) throw new Problem('sign_in_first', 'Tackleroom itself checks no gear.');
    return { id, name };
  }
}
