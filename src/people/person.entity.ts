import { Column, Entity, PrimaryGeneratedColumn, Unique } from 'typeorm';
import type { Role } from './role.js';

@Entity('person')
@Unique('uq_person_sign_in_name', ['signInName'])
export class PersonEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'varchar', length: 120 })
  name!: string;

  /** What the person types to sign in, in lower case. */
  @Column({ type: 'varchar', length: 120, name: 'sign_in_name' })
  signInName!: string;

  /** Argon2id in its PHC string form. */
  @Column({ type: 'varchar', length: 255, name: 'password_hash' })
  passwordHash!: string;

  @Column({ type: 'simple-json' })
  roles!: Role[];

  @Column({ type: 'boolean' })
  active!: boolean;

  @Column({ type: 'varchar', length: 24, name: 'created_at' })
  createdAt!: string;

  @Column({ type: 'integer' })
  version!: number;
}
