import { crc32, deflateRawSync } from 'node:zlib';

/** A ZIP file (PKWARE APPNOTE 6.3) of these entries. `claimedSize` lies about how large an entry is unpacked. */
export function zip(
  entries: readonly { name: string; content: Buffer | string; claimedSize?: number }[],
): Buffer {
  const [locals, directory]: [Buffer[], Buffer[]] = [[], []];
  let offset = 0;
  for (const { name, content, claimedSize } of entries) {
    const bytes = Buffer.from(content);
    const packed = deflateRawSync(bytes, { level: 9 });
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(8, 4); // deflated
    common.writeUInt32LE(crc32(bytes), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(claimedSize ?? bytes.length, 18);
    common.writeUInt16LE(Buffer.byteLength(name), 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, Buffer.from(name), packed]);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(offset, 10);
    const made = Buffer.from([20, 0]);
    directory.push(
      Buffer.concat([Buffer.from('PK\x01\x02', 'latin1'), made, common, rest, Buffer.from(name)]),
    );
    locals.push(local);
    offset += local.length;
  }
  const end = Buffer.alloc(18);
  end.writeUInt16LE(entries.length, 4);
  end.writeUInt16LE(entries.length, 6);
  end.writeUInt32LE(Buffer.concat(directory).length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...locals, ...directory, Buffer.from('PK\x05\x06', 'latin1'), end]);
}

const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

/** A workbook (ECMA-376) whose first sheet holds this XML between `<sheetData>` and its end. */
export function workbook(sheetData: string, more: Parameters<typeof zip>[0] = []): Buffer {
  return zip([
    {
      name: '_rels/.rels',
      content: `<Relationships xmlns="${PACKAGE}"><Relationship Id="r" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    },
    {
      name: 'xl/workbook.xml',
      content: `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets><sheet name="Gear" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    },
    {
      name: 'xl/_rels/workbook.xml.rels',
      content: `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    },
    {
      name: 'xl/worksheets/sheet1.xml',
      content: `<worksheet xmlns="${MAIN}"><sheetData>${sheetData}</sheetData></worksheet>`,
    },
    ...more,
  ]);
}
