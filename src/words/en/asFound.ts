/** Words of the readings as found: on the sheet, and in the report beside those as left. */

export const asFoundWords = {
  record: 'Record as found',
  again: 'Record again',
  recorded: (at: string): string => `As found, at ${at}, per cent of the tallest place:`,
  reading: (hz: string, percent: number | null): string => `${hz} ${percent === null ? 'not on the tube' : percent}`,
  report: {
    title: 'As found and as left',
    note: 'As the tube showed them, by the dials of the sweep: per cent of the tallest place.',
    columns: { hz: 'At', found: 'As found', left: 'As left' },
    percent: (percent: number | null): string => (percent === null ? 'not read' : `${percent}%`),
  },
} as const;
