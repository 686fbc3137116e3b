import { calendarOf } from '../../../src/reports/calendar/calendar-of.ts';
import { newLedger } from '../../../src/reports/calendar/ledger.ts';
import { bookOf, plan, ZONE } from './made-shop.ts';

const request = { plan, book: bookOf(), now: plan.madeAt, choice: {}, warnMinutes: 30, form: 'file' } as const;
process.stdout.write(calendarOf({ ...request, ledger: newLedger('shop', ZONE) }).text);
