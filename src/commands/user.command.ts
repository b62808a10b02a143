import { createInterface } from 'node:readline/promises';
import { parseArgs } from 'node:util';
import { readInput } from '../http/input.js';
import { SYSTEM_ACTOR } from '../people/actor.js';
import { NewPersonDto } from '../people/people.dto.js';
import { PeopleService } from '../people/people.service.js';
import { ROLES } from '../people/role.js';
import type { Command } from './command.js';

/** Makes an account. The password is read from the standard input, so that it stands in no list of processes. */
export const userCommand: Command = {
  name: 'user',
  usage: `user --name NAME --sign-in-name NAME --role ROLE [--role ROLE]    make an account (${ROLES.join(', ')})`,
  async run(app, words) {
    const { values } = parseArgs({
      args: [...words],
      options: {
        name: { type: 'string' },
        'sign-in-name': { type: 'string' },
        role: { type: 'string', multiple: true },
      },
    });
    const password = await readPassword();
    const input = await readInput(NewPersonDto, {
      name: values.name,
      signInName: values['sign-in-name'],
      roles: values.role,
      password,
    });
    const person = await app.get(PeopleService).create(SYSTEM_ACTOR, input);
    console.log(`${person.name} may now sign in as ${person.signInName}.`);
    return 0;
  },
};

async function readPassword(): Promise<string> {
  const lines = createInterface({ input: process.stdin });
  console.error('Type the password and press Enter:');
  for await (const line of lines) {
    lines.close();
    return line;
  }
  return '';
}
