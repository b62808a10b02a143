import type TestAgent from 'supertest/lib/agent.js';
import type { GearServer } from './gear-server.js';

/** What tests do to an item through the API, as someone. `examination` is what a record says unless told otherwise. */
export function itemCalls(server: () => GearServer, examination: object) {
  const record = (who: TestAgent, id: number, differences: object = {}) =>
    who.post(`/api/items/${id}/inspections`).send({ ...examination, ...differences });
  return {
    record,
    act: (who: TestAgent, id: number, path: string, body: object) =>
      who.post(`/api/items/${id}/${path}`).send(body),
    read: async (id: number) => (await server().crew.get(`/api/items/${id}`).expect(200)).body,
    actions: async (id: number): Promise<string[]> =>
      (await server().crew.get(`/api/items/${id}/history`).expect(200)).body.map(
        ({ action }: { action: string }) => action,
      ),
    refusedField: async (who: TestAgent, id: number, differences: object): Promise<string> => {
      const { body } = await record(who, id, differences).expect(400);
      return `${body.errors[0].field}: ${body.errors[0].message}`;
    },
  };
}
