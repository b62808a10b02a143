/** A signed-in client of a server in another process, with nothing but fetch. */
export class ApiClient {
  private constructor(
    private readonly address: string,
    private readonly cookie: string,
  ) {}

  /** Signs in, making the first account where a setup code is given. */
  static async signIn(
    address: string,
    account: { signInName: string; password: string; setupCode?: string },
  ): Promise<ApiClient> {
    const { setupCode, ...credentials } = account;
    const headers = { 'content-type': 'application/json' };
    if (setupCode) {
      const body = JSON.stringify({ ...credentials, setupCode, name: 'First Person' });
      await fetch(`${address}/api/first-account`, { method: 'POST', headers, body });
    }
    const answer = await fetch(`${address}/api/session`, {
      method: 'POST',
      headers,
      body: JSON.stringify(credentials),
    });
    const cookie = answer.headers.get('set-cookie')?.split(';')[0];
    if (!cookie) throw new Error(`Signing in failed with ${answer.status}.`);
    return new ApiClient(address, cookie);
  }

  async get<T>(path: string): Promise<T> {
    const answer = await fetch(this.address + path, { headers: { cookie: this.cookie } });
    if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`);
    return (await answer.json()) as T;
  }

  /** Posts JSON, or a form as it is. */
  async post<T>(path: string, body: object): Promise<T> {
    const isForm = body instanceof FormData;
    const answer = await fetch(this.address + path, {
      method: 'POST',
      headers: { cookie: this.cookie, ...(isForm ? {} : { 'content-type': 'application/json' }) },
      body: isForm ? body : JSON.stringify(body),
    });
    if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`);
    return (answer.status === 204 ? undefined : await answer.json()) as T;
  }
}
