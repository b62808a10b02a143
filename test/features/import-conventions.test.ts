import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load-catalogue.js';
import { guessFields, headingUnit } from '../../src/register/import/guess-fields.js';
import { HEADING_WORDS } from '../../src/register/import/heading-words.js';
import { lettersApart, plainWords } from '../../src/register/import/plain-words.js';
import { detectDateOrder, readDate } from '../../src/register/import/read-date.js';

const KINDS = loadCatalogue(new URL('../../config', import.meta.url).pathname).kinds();

describe('dates', () => {
  // ISO 8601-1 for year-month-day; the rest is how stores write, common practice, no source.
  it.each([
    ['2026-05-09', 'unknown', '2026-05-09'],
    ['2026/5/9', 'unknown', '2026-05-09'],
    ['2026-05-09 00:00:00', 'unknown', '2026-05-09'],
    ['09.05.2026', 'unknown', '2026-05-09'],
    ['09.05.2026', 'monthFirst', '2026-05-09'],
    ['09/05/2026', 'dayFirst', '2026-05-09'],
    ['09/05/2026', 'monthFirst', '2026-09-05'],
    ['9-5-2026', 'dayFirst', '2026-05-09'],
    ['13/05/2026', 'unknown', '2026-05-13'],
    ['05/13/2026', 'unknown', '2026-05-13'],
    ['05/05/2026', 'unknown', '2026-05-05'],
    ['09-May-2026', 'unknown', '2026-05-09'],
    ['9. Mai 2026', 'unknown', '2026-05-09'],
    ['3rd March 2026', 'unknown', '2026-03-03'],
    ['1 de mayo de 2026', 'unknown', '2026-05-01'],
    ['12 août 2026', 'unknown', '2026-08-12'],
    ['May 9, 2026', 'unknown', '2026-05-09'],
    ['29/02/2024', 'dayFirst', '2024-02-29'],
  ] as const)('%s under %s is %s', (cell, order, day) => {
    expect(readDate(cell, order)).toEqual({ ok: true, day });
  });

  it.each([
    ['31/11/2026', 'dayFirst', 'not_a_day'],
    ['31/11/2026', 'unknown', 'not_a_day'],
    ['29/02/2026', 'dayFirst', 'not_a_day'],
    ['13/05/2026', 'monthFirst', 'not_a_day'],
    ['05.13.2026', 'monthFirst', 'not_a_day'],
    ['09/05/2026', 'unknown', 'ambiguous_date'],
    ['12/11/2026', 'unknown', 'ambiguous_date'],
    ['09/05/26', 'dayFirst', 'two_digit_year'],
    ['09-May-26', 'dayFirst', 'two_digit_year'],
    ['46145', 'dayFirst', 'not_a_day'],
    ['May 2026', 'dayFirst', 'not_a_day'],
    ['last spring', 'dayFirst', 'not_a_day'],
    ['9/5-2026', 'dayFirst', 'not_a_day'],
  ] as const)('%s under %s is refused: %s', (cell, order, reason) => {
    expect(readDate(cell, order)).toEqual({ ok: false, reason });
  });

  it('takes the order from dates that read one way, and from none that disagree', () => {
    expect(detectDateOrder(['09/05/2026', '13/05/2026'])).toBe('dayFirst');
    expect(detectDateOrder(['09/05/2026', '05/13/2026'])).toBe('monthFirst');
    expect(detectDateOrder(['09/05/2026', '12/12/2026'])).toBe('unknown');
    expect(detectDateOrder(['13/05/2026', '05/13/2026'])).toBe('unknown');
    expect(detectDateOrder(['13.05.2026', '2026-05-13'])).toBe('unknown');
    expect(detectDateOrder(['31/11/2026'])).toBe('dayFirst');
  });
});

describe('headings', () => {
  it.each([
    [
      'Asset No.|Description|Manufacturer|S/N|WLL (kg)|Length (m)|Date of last examination|Location|Remarks',
      'English',
    ],
    ['Inventar-Nr.|Gerät|Marke|Seriennr.|Traglast|Nutzlänge|Geprüft am|Standort|Anmerkung', 'German'],
    [
      "N° d'inventaire|Désignation|Marque|N° de série|CMU|Longueur|Dernière vérification|Emplacement|Remarques",
      'French',
    ],
    [
      'Inventarisnummer|Omschrijving|Merk|Serienummer|Werklast|Lengte|Laatste keuring|Locatie|Opmerkingen',
      'Dutch',
    ],
    [
      'Nº inventario|Equipo|Marca|Número de serie|Carga máxima|Longitud|Última revisión|Ubicación|Observaciones',
      'Spanish',
    ],
    [
      'Matricola interna|Attrezzatura|Costruttore|Numero di serie|Portata|Lunghezza|Ultima verifica|Magazzino|Note',
      'Italian',
    ],
    ['Nr inwentarzowy|Nazwa|Producent|Numer seryjny|Udźwig|Długość|Ostatni przegląd|Magazyn|Uwagi', 'Polish'],
  ])('of a list in %s', (headings) => {
    const fields = ['tag', 'kind', 'maker', 'serial', 'rating', 'length', 'lastExamined', 'store', 'notes'];
    expect(guessFields(headings.split('|'), KINDS)).toEqual(fields);
  });

  it('knows the sizes of the catalogue by their labels, and units in brackets or after in', () => {
    expect(guessFields(['Smallest jaw opening (mm)', 'largest jaw opening'], KINDS)).toEqual([
      'size.jawMinimumMm',
      'size.jawMaximumMm',
    ]);
    expect(headingUnit('Length (m)')).toBe('m');
    expect(headingUnit('Traglast in kg')).toBe('kg');
    expect(headingUnit('WLL [t]')).toBe('t');
    expect(headingUnit('Length')).toBeUndefined();
    expect(headingUnit('Notes (old)')).toBeUndefined();
  });

  it('gives a field to the first of two headings that claim it, and guesses nothing of others', () => {
    expect(guessFields(['Serial', 'S/N', 'Colour', ''], KINDS)).toEqual(['serial', null, null, null]);
  });

  it('lists no word under two fields', () => {
    const words = [...HEADING_WORDS.values()].flatMap((list) => [...new Set(list.map(plainWords))]);
    expect(words).toHaveLength(new Set(words).size);
  });
});

describe('words', () => {
  it('compare without case, accents and full stops', () => {
    expect(plainWords('  N°  de SÉRIE. ')).toBe('n de serie');
    expect(plainWords('Größe:')).toBe('grosse');
  });

  it('are so many letters apart', () => {
    expect(lettersApart('trolly', 'trolley')).toBe(1);
    expect(lettersApart('', 'abc')).toBe(3);
    expect(lettersApart('kitten', 'sitting')).toBe(3); // the worked example of the textbooks
    expect(lettersApart('same', 'same')).toBe(0);
  });
});
