import { describe, expect, it } from 'vitest';
import { digestContent } from '../../src/reminders/digest/digest-model.js';
import { letter } from '../../src/reminders/mails/letter.js';
import { fittingSubject } from '../../src/reminders/mails/mail-content.js';
import { diaryEntry, digestFacts, told } from '../support/example-mails.js';

// Unicode UAX #9, table 4 and section 2.6: the marks that turn writing around, embed it and set it apart.
const TURNING = '\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069';

describe('a mail about what people named as they liked', () => {
  it('keeps the order of its words, whatever marks of direction a name holds', () => {
    const job = (reference: string) => ({
      jobId: 7,
      reference,
      from: stop.dueOn,
      to: stop.dueOn,
      out: false,
    });
    const stop = diaryEntry(1, 7);
    const jobs = [job(`LM${TURNING}-7`)];
    const entry = { ...stop, tag: `PL${TURNING}-1`, storeName: `North${TURNING} store`, jobs, stops: jobs };
    const content = digestContent(digestFacts([told(entry)]));
    const { toName, subject, plainText, html } = letter(content, {
      personId: 1,
      name: `Ines${TURNING} Okonjo`,
      address: 'ines@yard.example',
    });
    expect(toName).toBe('Ines Okonjo');
    expect(subject).toContain('job LM-7 at stake');
    for (const words of ['PL-1, panel lifter', 'LM-7', 'North store']) {
      expect(plainText).toContain(words);
      expect(html).toContain(words);
    }
    for (const mark of TURNING) expect(subject + plainText + html).not.toContain(mark);
  });

  it('keeps emoji and the letters of every script', () => {
    const tag = 'شاكل-٣ 吊具 🏗️👷🏽';
    const { plainText, html } = letter(digestContent(digestFacts([told(diaryEntry(1, -1, { tag }))])), {
      personId: 1,
      name: 'Ines',
      address: 'ines@yard.example',
    });
    expect(plainText).toContain(`* ${tag}, panel lifter`);
    expect(html).toContain(tag);
  });

  it('cuts a subject between characters, never within one', () => {
    const cut = fittingSubject(`${'a'.repeat(198)}${'🏗'.repeat(3)}`);
    expect(cut).toBe(`${'a'.repeat(198)}🏗…`);
    expect([...cut]).toHaveLength(200);
  });
});
