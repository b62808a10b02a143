import { FIELDS } from './fields.js';

type NamedField = (typeof FIELDS)[number];

/**
 * What stores write above their columns, in English, German, French, Dutch, Spanish, Italian, Portuguese, Polish and
 * the Scandinavian languages. In lower case, without accents, full stops and what stands in brackets. From memory.
 * A word stands for one field; words that could be two (a bare 'date', 'code' or 'name') are left to the storeman.
 */
const LISTS: Readonly<Record<NamedField, string>> = {
  tag: `
    no, nr, n, tag, tag no, tag number, asset, asset no, asset number, asset id, asset tag, item no,
    item number, id, id no, id number, gear no, plant no, plant number, inventory no, inventory number,
    our no, our mark, mark, fleet no, inventarnr, inventarnummer, inventar-nr, inv-nr, inv nr, geratenr,
    geratenummer, kennzeichen, kennung, nummer, lfd nr, betriebsnr, numero, n inventaire, n d inventaire,
    no d inventaire, no inventaire, numero inventaire, numero d inventaire, repere, inventarisnr,
    inventarisnummer, volgnummer, numero de inventario, no inventario, no de inventario, n inventario,
    numero inventario, matricola interna, matricula, nr inwentarzowy, numer inwentarzowy, inventarienr,
    inventarienummer, merkenr, markning, inventar no`,
  kind: `
    item, kind, type, gear, gear type, equipment, equipment type, description, what, item type, category,
    class, art, typ, gerat, gerateart, bezeichnung, gegenstand, arbeitsmittel, anschlagmittel, benennung,
    designation, materiel, equipement, genre, nature, soort, omschrijving, middel, hijsmiddel, benaming,
    tipo, equipo, descripcion, clase, attrezzatura, descrizione, descricao, equipamento, rodzaj, nazwa,
    opis, slag, benamning, redskap, udstyr, utstyr, betegnelse, beskrivelse, beskrivning`,
  maker: `
    make, maker, manufacturer, mfr, mfg, brand, made by, hersteller, fabrikat, marke, fabricant, marque,
    constructeur, fabrikant, merk, fabricante, marca, costruttore, produttore, fabbricante, producent,
    marka, tillverkare, produsent, leverantor`,
  serial: `
    serial, serial no, serial nr, serial number, s/n, sn, ser no, makers no, manufacturer no, maker no,
    makers number, fabriknummer, fabriknr, fabrik-nr, seriennummer, seriennr, serien-nr, herstellnummer,
    werknummer, fabr-nr, numero de serie, n de serie, no de serie, no serie, n serie, serie, serienummer,
    serienr, serie nr, fabrieksnummer, fabricagenummer, numero di serie, matricola, n di serie,
    numero serie, num serie, numer seryjny, nr seryjny, nr fabryczny, numer fabryczny,
    tillverkningsnummer, fabrikasjonsnummer`,
  batch: `
    batch, batch no, batch number, lot, lot no, lot number, production batch, chargennummer, chargen-nr,
    charge nr, losnummer, no de lot, numero de lot, lotnummer, partij, numero de lote, no de lote, lote,
    lotto, numero di lotto, numer partii, nr partii, partia, batchnummer, batchnr, partinummer`,
  rating: `
    swl, wll, lc, swl / lc, swl/lc, wll / lc, wll/lc, wll/swl, swl/wll, rating, rated load,
    rated capacity, capacity, safe working load, working load limit, lashing capacity, max load,
    maximum load, load limit, load, tragfahigkeit, traglast, nutzlast, nennlast, zurrkraft, tragkraft,
    tragfahigkeit / lc, last, cmu, charge, charge maximale, charge maximale d utilisation, charge utile,
    capacite, werklast, hijsvermogen, draagvermogen, capaciteit, carga maxima, carga maxima de trabajo,
    carga de trabajo, capacidad, cmt, cmu / lc, portata, portata massima, carico massimo,
    carga maxima de utilizacao, capacidade, udzwig, dor, nosnosc, dopuszczalne obciazenie, maxlast,
    max last, lastkapacitet, baerevne, kapacitet, kapasitet, loftekapacitet`,
  length: `
    length, working length, effective length, len, lange, nutzlange, lange l, longueur, long, lengte,
    werklengte, longitud, largo, lunghezza, comprimento, dlugosc, langd, laengde, lengde`,
  lastExamined: `
    last exam, last examined, last examination, last inspection, last inspected, last check,
    last checked, last test, last tested, examined, inspected, date of last examination,
    date of examination, date of last inspection, exam date, examination date, inspection date,
    last thorough examination, date examined, date inspected, loler date, letzte prufung, letzte uvv,
    letzte uvv-prufung, gepruft, gepruft am, prufdatum, prufung, letzte uvv prufung, zuletzt gepruft,
    datum der letzten prufung, derniere verification, derniere inspection, derniere vgp,
    dernier controle, verifie le, date de verification, date vgp, controle le, date de controle,
    laatste keuring, keuringsdatum, gekeurd, laatst gekeurd, laatste inspectie, datum keuring,
    ultima inspeccion, ultima revision, fecha de inspeccion, fecha de revision, ultima verifica,
    ultima ispezione, data verifica, ultimo controllo, ultima inspecao, data da inspecao,
    ostatni przeglad, data przegladu, ostatnie badanie, data badania, senaste besiktning,
    senast besiktigad, senaste kontroll, sidste eftersyn, seneste eftersyn, siste kontroll,
    sist kontrollert, besiktningsdatum`,
  store: `
    where, store, location, depot, yard, kept at, stored at, storage, site, warehouse, place, lager,
    lagerort, standort, ort, halle, lagerplatz, magasin, lieu, emplacement, entrepot, magazijn, locatie,
    opslag, plaats, almacen, ubicacion, lugar, deposito, magazzino, ubicazione, sede, armazem, local,
    localizacao, magazyn, miejsce, lokalizacja, forrad, plats, lagerplads, sted, plassering`,
  notes: `
    notes, note, remarks, remark, comments, comment, observations, bemerkung, bemerkungen, anmerkung,
    anmerkungen, notiz, hinweis, kommentar, remarque, remarques, commentaire, commentaires, opmerking,
    opmerkingen, observaciones, notas, comentarios, osservazioni, annotazioni, observacoes, uwagi,
    anmarkning, anmarkningar, bemaerkning, bemaerkninger, merknad, merknader, anteckning`,
  manufacturedOn: `
    manufactured, date of manufacture, manufacture date, made, dom, made on, herstelldatum, hergestellt,
    herstellungsdatum, date de fabrication, fabricatiedatum, fecha de fabricacion, data di fabbricazione,
    data de fabrico, data produkcji, tillverkningsdatum, produktionsdato, produksjonsdato`,
  firstUsedOn: `
    first used, first use, in service, in service since, in use since, put into service, date in service,
    inbetriebnahme, in betrieb seit, erster einsatz, mise en service, date de mise en service,
    in gebruik, ingebruikname, puesta en servicio, messa in servizio, entrada em servico,
    data wprowadzenia do uzytku, i bruk sedan, i brug siden, i bruk siden`,
  condition: `
    condition, zustand, etat, conditie, stan, tilstand, skick`,
  labelLegible: `
    label legible, label readable, etikett lesbar, label leesbaar, etiquette lisible`,
  certificateOnFile: `
    report on file, certificate on file, reports on file, nachweis vorhanden`,
  owner: `
    owner, owned by, belongs to, hire company, eigentumer, vermieter, proprietaire, loueur, eigenaar,
    verhuurder, propietario, proprietario, wlasciciel, agare, ejer, eier`,
  hiredFrom: `
    first day of hire, hire start, hire starts, on hire from, on hire since, mietbeginn, gemietet ab,
    debut de location, begin huur`,
  hiredTo: `
    last day of hire, hire end, hire ends, on hire until, on hire through, off hire, mietende, gemietet bis,
    fin de location, einde huur`,
};

/** The heading words of each field. */
export const HEADING_WORDS: ReadonlyMap<NamedField, readonly string[]> = new Map(
  FIELDS.map((field) => [field, wordsOf(LISTS[field])]),
);

/** Headings that only a panel schedule has, to say so when one is handed over as a register. */
export const PANEL_WORDS: readonly string[] = wordsOf(
  'panel, height, width, thickness, mass, kg/m2, packing, qty',
);

/** What stands in the first cell of a line that sums up. */
export const TOTAL_WORDS: readonly string[] = wordsOf(`
    total, totals, sum, count, grand total, subtotal, sub-total, sous-total, sous total, zwischensumme, subtotaal, summe, gesamt, gesamtsumme, anzahl, total general,
    totaal, totale, suma, soma, razem, ogolem, i alt, totalt, summa, somme, end, ende`);

function wordsOf(list: string): string[] {
  return list.split(',').map((word) => word.trim());
}
