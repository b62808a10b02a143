import { describe, expect, it } from 'vitest';
import writeSheet from 'write-excel-file/node';
import { readTable } from '../../src/register/import/read-table.js';
import { sample } from '../support/import-client.js';
import { workbook, zip } from '../support/zip.js';

async function texts(bytes: Buffer | string): Promise<string[][]> {
  const { rows } = await readTable(Buffer.from(bytes));
  return rows.map(({ cells }) => cells.map(({ text }) => text));
}

// The cases of RFC 4180 section 2, numbered as there.
describe('CSV by RFC 4180', () => {
  it.each([
    [
      '1: CRLF ends a record',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2: the last record may lack its line break',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '5: fields may be quoted',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '6: line breaks and commas inside quotes',
      '"aaa","b\r\nbb","c,cc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'c,cc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['7: a quote is doubled inside quotes', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('%s', async (_, csv, rows) => {
    expect(await texts(csv)).toEqual(rows);
  });

  it('tells the delimiter from the rows', async () => {
    expect((await readTable(Buffer.from('a;b;c\n1,5;2,5;3,5\n'))).delimiter).toBe(';');
    expect((await readTable(Buffer.from('a\tb\n"1\t2,"\t3,4\n'))).delimiter).toBe('\t');
    expect((await readTable(Buffer.from('a,b\n"x;y;z",2\n'))).delimiter).toBe(',');
    expect(await texts('sep=;\r\na,b;c\r\n')).toEqual([['a,b', 'c']]);
  });

  it('takes the mark of inches for a letter', async () => {
    expect(await texts(`a,8' 6",c\r\n"d ""e""",f,g\r\n`)).toEqual([
      ['a', `8' 6"`, 'c'],
      ['d "e"', 'f', 'g'],
    ]);
  });

  it('numbers rows as a spreadsheet does, blank and broken lines included', async () => {
    const { rows } = await readTable(Buffer.from('title\n\n"two\nlines",1\nlast,2\n'));
    expect(rows.map(({ number, cells }) => [number, cells[0]?.text])).toEqual([
      [1, 'title'],
      [2, ''],
      [3, 'two\nlines'],
      [4, 'last'],
    ]);
  });

  it.each([
    ['UTF-8', Buffer.from('Länge,ß\n'), 'utf-8'],
    ['UTF-8 with a byte-order mark', Buffer.from('\uFEFFLänge,ß\n'), 'utf-8'],
    ['Latin-1', Buffer.from('Länge,ß\n', 'latin1'), 'windows-1252'],
    ['UTF-16 with a byte-order mark', Buffer.from('\uFEFFLänge,ß\n', 'utf16le'), 'utf-16le'],
  ])('reads %s', async (_, bytes, encoding) => {
    const table = await readTable(bytes);
    expect(table.encoding).toBe(encoding);
    expect(table.rows[0]?.cells.map(({ text }) => text)).toEqual(['Länge', 'ß']);
  });

  it.each([
    ['a quotation mark never closed', 'a,b\n"c,d\n', 'never closed'],
    ['text after a closing mark', 'a,b\n"c"d,e\n', 'follows a closing quotation mark'],
    ['bytes that are no text', 'a,b\n\0\x01,d\n', 'not text'],
    ['nothing', '\n\n', 'Nothing is written'],
    ['an old workbook', Buffer.from('\xD0\xCF\x11\xE0rest', 'latin1'), 'old kind'],
  ])('refuses %s in a plain sentence', async (_, bytes, words) => {
    await expect(readTable(Buffer.from(bytes))).rejects.toMatchObject({
      code: 'unreadable_file',
      message: expect.stringContaining(words),
    });
  });

  it('takes what starts a calculation for a formula, unless our own guard stands before it', async () => {
    const { rows } = await readTable(
      Buffer.from("=600+200,+600+200,@SUM(A1),'=600,-800 kg,+ spare hook,-5+cmd\n"),
    );
    expect(rows[0]?.cells.map(({ is }) => is)).toEqual([
      'formula',
      'formula',
      'formula',
      'text',
      'text',
      'text',
      'formula',
    ]);
    expect(rows[0]?.cells[3]?.text).toBe('=600');
  });

  it('reads the samples whole', async () => {
    expect((await texts(sample('register-north.csv'))).length).toBe(143);
    expect((await texts(sample('register-continental.csv'))).length).toBe(61);
  });
});

describe('XLSX', () => {
  it('reads texts, numbers as they are written, ticks and days; the name and the type of the file do not matter', async () => {
    const bytes = await writeSheet(
      [
        ['Tag', 'SWL', 'Day', 'Tick'],
        ['007', 800.5, new Date(Date.UTC(2026, 4, 3)), true],
        [null, null, null, null],
        ['=600+200', null, null, false],
      ],
      { dateFormat: 'dd/mm/yyyy' },
    ).toBuffer();
    const { rows, encoding } = await readTable(bytes);
    expect(encoding).toBe('xlsx');
    expect(rows.map(({ cells }) => cells.map(({ text }) => text))).toEqual([
      ['Tag', 'SWL', 'Day', 'Tick'],
      ['007', '800.5', '2026-05-03', 'yes'],
      ['', '', '', ''],
      ['=600+200', '', '', 'no'],
    ]);
    expect(rows[1]?.cells.map(({ is }) => is)).toEqual(['text', 'number', 'text', 'text']);
    expect(rows[3]?.cells[0]?.is).toBe('formula');
  });

  it('finds formulas, of which a reader sees the last result only, and keeps row numbers where rows are left out', async () => {
    const sheet =
      '<row r="3"><c r="B3" t="inlineStr"><is><t>SWL</t></is></c></row>' +
      '<row r="5"><c r="A5"><v>7</v></c><c r="B5"><f>600+200</f><v>800</v></c></row>';
    const { rows } = await readTable(workbook(sheet));
    const row = rows.find(({ number }) => number === 5);
    expect(row?.cells.map(({ text, is }) => [text, is])).toEqual([
      ['7', 'number'],
      ['=(800)', 'formula'],
    ]);
    expect(rows.find(({ number }) => number === 3)?.cells[1]?.text).toBe('SWL');
  });

  it('refuses what would unpack beyond bounds, also when it lies about its size', async () => {
    const bomb = Buffer.alloc(70 * 1024 * 1024, ' ');
    await expect(readTable(workbook('', [{ name: 'xl/media/x', content: bomb }]))).rejects.toMatchObject({
      code: 'file_too_large',
    });
    const lying = workbook('', [{ name: 'xl/media/x', content: bomb, claimedSize: 100 }]);
    await expect(readTable(lying)).rejects.toMatchObject({
      code: expect.stringMatching(/file_too_large|unreadable_file/),
    });
    const many = Array.from({ length: 501 }, (_, n) => ({ name: `xl/media/${n}`, content: '' }));
    await expect(readTable(workbook('', many))).rejects.toMatchObject({ code: 'file_too_large' });
  });

  it('refuses other packed files and damaged ones', async () => {
    await expect(readTable(zip([{ name: 'a.txt', content: 'a' }]))).rejects.toMatchObject({
      code: 'unreadable_file',
    });
    await expect(readTable(zip([{ name: '../a.txt', content: 'a' }]))).rejects.toMatchObject({
      code: 'unreadable_file',
    });
    await expect(readTable(workbook('').subarray(0, 200))).rejects.toMatchObject({ code: 'unreadable_file' });
    await expect(readTable(workbook('<row><c'))).rejects.toMatchObject({ code: 'unreadable_file' });
  });
});
