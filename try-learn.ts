import { LESSON_IDS } from './src/model/learning/lesson.ts';
import { roundOf, answerOf } from './src/model/learning/ask.ts';
for (const id of LESSON_IDS) {
  const t = performance.now(); let n = 0; const errs = new Map<string, number>(); const tally = new Map<string, number>();
  for (let s = 0; s < 40; s++) for (const unit of ['in','mm'] as const) {
    try { for (const st of roundOf(id, s, unit).steps) { const a = answerOf(st); n++; const k = st.id + ':' + (typeof a === 'number' ? '#' : a); tally.set(k, (tally.get(k) ?? 0) + 1); if (s===3) console.log(id, st.id, a, JSON.stringify(st.given)); } }
    catch (e) { errs.set(String(e).slice(0,120), (errs.get(String(e).slice(0,120)) ?? 0)+1); }
  }
  console.log(id, ((performance.now() - t)/80).toFixed(1), 'ms/round', JSON.stringify([...tally]), JSON.stringify([...errs]));
}
