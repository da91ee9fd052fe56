/** Words of the workshop, where an instructor makes scenarios. */

export const workshopWords = {
  places: 'Parts of the workshop',
  scenario: { tab: 'Scenario', title: 'Workshop: a scenario of your own' },
  receiver: { tab: 'Receiver', title: 'Workshop: a receiver of your own' },
  evening: { tab: 'Evening sheet', title: 'Workshop: a sheet for the evening' },
} as const;
