import { Column, Entity, PrimaryGeneratedColumn } from 'typeorm';

/** An item whose due day has to be worked out again. Triggers write it with whatever could have moved the day. */
@Entity('due_stale')
export class DueStaleEntity {
  @PrimaryGeneratedColumn({ type: 'integer' })
  id!: number;

  @Column({ type: 'integer', name: 'item_id' })
  itemId!: number;
}
