import { CannotGoOn, type Call, type ExitCode } from './call.ts';
import { enter } from './enter.ts';
import { choosePiece } from './name-things.ts';
import { openShop } from './open-shop.ts';
import { wordOf } from './word-of.ts';
import { worded } from '../words/worded.ts';

/** What the lead test of a piece's old paint found. */
export async function answer(call: Call): Promise<ExitCode> {
  const [word = '', resultWord = ''] = call.words;
  const result = wordOf(worded`result`, resultWord, ['found', 'none']);
  const shop = await openShop(call);
  const piece = await choosePiece(call, shop.book.pieces, word);
  if (!piece.mayCarryLead)
    throw new CannotGoOn(
      worded`${piece.name} is not said to carry lead`,
      worded`write \`may-carry-lead: yes\` in its file first`,
    );
  const found = result === 'found';
  const said = found
    ? worded`${piece.name} carries lead: what disturbs it stays out of the plan; follow local rules and licensed practice`
    : worded`no lead found on ${piece.name}`;
  return enter(call, shop, 'lead-test', () => [{ kind: 'lead-test', piece: piece.id, found }], said);
}
