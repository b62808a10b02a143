import 'reflect-metadata';
import { PeopleService } from './people/people.service.js';
import { SetupCode } from './people/setup-code.js';
import { readSettings } from './settings.js';
import { createApp } from './web/create-app.js';

/** Starts the server and says where it is. */
async function main(): Promise<void> {
  const settings = readSettings(process.env);
  const app = await createApp(settings);
  await app.listen(settings.port, settings.host);
  console.log(`Tackleroom is open at ${await app.getUrl()}`);
  if (!(await app.get(PeopleService).hasAccounts())) {
    console.log(
      `There is no account yet. Open the address and type this setup code: ${app.get(SetupCode).code}`,
    );
  }
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
