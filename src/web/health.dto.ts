/** The answer to a liveness probe. */
export class HealthView {
  status!: 'ok';
}
