/** Who is signed in on a phone. */
export class PhonePersonView {
  id!: number;
  name!: string;
}
