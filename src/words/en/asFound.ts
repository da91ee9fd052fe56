/** Words of the readings as found: on the sheet, and in the report beside those as left. */

export const asFoundWords = {
  record: 'Record as found',
  again: 'Record again',
  recorded: (at: string): string => `As found, at ${at}, in per cent of the highest point:`,
  reading: (hz: string, percent: number | null): string => `${hz} ${percent === null ? 'not on the tube' : percent}`,
  report: {
    title: 'As found and as left',
    note: 'As read off the tube by the dials of the sweep, in per cent of the highest point.',
    columns: { hz: 'At', found: 'As found', left: 'As left' },
    percent: (percent: number | null): string => (percent === null ? 'not read' : `${percent}%`),
  },
} as const;
