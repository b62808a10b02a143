import 'reflect-metadata';
import { DemoScenario } from './demo/demo-scenario.js';
import { DEMO_ACCOUNTS } from './people/demo-accounts.js';
import { PeopleService } from './people/people.service.js';
import { SetupCode } from './people/setup-code.js';
import { ReminderSchedule } from './reminders/schedule/reminder-schedule.service.js';
import { readSettings } from './settings.js';
import { removeEmbeddedDatabase } from './storage/sqlite-driver.js';
import { createApp } from './web/create-app.js';

/** Starts the server and says where it is and who may sign in. */
async function main(): Promise<void> {
  const settings = readSettings(process.env);
  if (settings.demo) removeEmbeddedDatabase(settings.dataDir); // yesterday's scenario is out of date today
  const app = await createApp(settings);
  if (settings.demo) await app.get(DemoScenario, { strict: false }).play();
  await app.listen(settings.port, settings.host);
  app.get(ReminderSchedule, { strict: false }).start();
  console.log(`Tackleroom is open at ${await app.getUrl()}`);
  if (settings.demo) console.log(demoWelcome());
  else if (!(await app.get(PeopleService).hasAccounts())) {
    const { code } = app.get(SetupCode);
    console.log(`There is no account yet. Open the address and type this setup code: ${code}`);
  }
}

function demoWelcome(): string {
  const lines = DEMO_ACCOUNTS.map(
    ({ signInName, password, roles }) =>
      `  ${signInName.padEnd(6)} with '${password}'  (${roles.join(', ')})`,
  );
  return `Everything in it is invented, and made afresh at every start. Sign in as\n${lines.join('\n')}`;
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
});
