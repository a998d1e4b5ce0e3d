import { provenCases, woods } from './proven.js';
import { planMesh } from './planMesh.js';
import { solidMesh } from './solidMesh.js';
import { writeDeck, plateNodes } from './deck.js';
import { Measure, gridOf, massAndArea } from './measure.js';
import { runProgram } from './program.js';
import { writeFileSync } from 'node:fs';
const only = process.argv[2]; const sp = Number(process.argv[3] ?? 0);
for (const c of provenCases) {
  if (only && !c.top.name.includes(only)) continue;
  const t0 = Date.now();
  const plan = planMesh(c.top, sp || c.spacing);
  const mesh = solidMesh(c.top, plan);
  const t1 = Date.now();
  writeFileSync('/tmp/plan.json', JSON.stringify({x:[...plan.x],y:[...plan.y],quads:plan.quads.map(q=>[...q]),b:plan.bracesOf,p:plan.patchesOf}));
  const deck = writeDeck(c.top, woods, mesh, 8);
  writeFileSync('/tmp/top.inp', deck);
  console.log(c.top.name, 'quads', plan.quads.length, 'nodes', mesh.places.length/3, 'bricks', mesh.bricks.length, t1-t0, 'ms', massAndArea(c.top, woods, plan));
  const r = runProgram(deck);
  const grid = gridOf(c.top, 100);
  const m = new Measure(c.top, mesh, grid);
  const f = r.frequencies.slice(c.top.edge==='free'?6:0);
  console.log(r.seconds, 's', r.blocks.length, r.frequencies.length, r.effectiveMassUp.map(v=>v.toPrecision(3)).join(' '));
  c.frequencies.forEach((ref,i)=>console.log(ref, f[i], ((f[i]!/ref-1)*100).toFixed(3)+'%'));
  console.log(grid.length, m.mode(n=>r.blocks[c.top.edge==='free'?6:0]!.get(n+1)![2]));
  if (c.top.load) for (const k of [8,9]) { const s = m.statics(n=>r.blocks[k]!.get(n+1)![2]); console.log({...s, shape_mm: 0}); }
}
