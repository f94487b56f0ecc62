/** The screens of the app, each with the question it answers. A screen is listed only when it works. */
export const screens = [
  { id: 'workings', name: 'Workings', asks: 'Where is everything?' },
  { id: 'grade', name: 'Grade', asks: 'How much gold, where, and how sure are we?' },
  { id: 'pay', name: 'Pay', asks: 'Is it worth our days?' },
  { id: 'write', name: 'Write', asks: 'What did you see, measure or take?' },
  { id: 'book', name: 'Book', asks: 'What is written, by whom and when?' },
] as const

export type ScreenId = typeof screens[number]['id']
