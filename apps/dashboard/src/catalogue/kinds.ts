// The trade's kinds of call, as they are read.
import { words } from './words.ts';

export const kinds = words({
  rehearsal: 'Rehearsal',
  lesson: 'Lesson',
  coaching: 'Coaching',
  'dress rehearsal': 'Dress rehearsal',
  recital: 'Recital',
  jury: 'Jury',
  exam: 'Exam',
  audition: 'Audition',
  'competition round': 'Competition round',
  recording: 'Recording',
  class: 'Class',
  service: 'Service',
  other: 'Other call',
});
