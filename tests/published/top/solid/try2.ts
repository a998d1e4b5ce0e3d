import { solidTops } from './tops.js';
import { planMesh } from './planMesh.js';
import { solidMesh } from './solidMesh.js';
import { massAndArea } from './measure.js';
import { woods } from './proven.js';
import { distanceToRim } from '../../../../language/mechanics/top/polygon.js';
import { stripOf } from './strips.js';
import { writeFileSync } from 'node:fs';
for (const top of solidTops) {
  for (const b of top.braces) { const s = stripOf(b,0); console.log('  ', b.name, s.length.toFixed(2), s.corners.map(([x,y])=>distanceToRim(top.outline_mm,x,y).toFixed(1)).join(' ')); }
  for (const sp of (process.argv[2]??'30,22,16').split(',').map(Number)) { try {
    const plan = planMesh(top, sp); const mesh = solidMesh(top, plan);
    console.log(top.name, sp, plan.quads.length, mesh.places.length/3, massAndArea(top, woods, plan));
    const svg = plan.quads.map((q,i)=>`<polygon points="${[...q.slice(0,4)].map(n=>`${plan.x[n]!*2},${420-plan.y[n]!*2}`).join(' ')}" fill="${plan.bracesOf[i]!.length===2?'#c33':plan.bracesOf[i]!.length?'#da8':plan.patchesOf[i]!.length===2?'#686':plan.patchesOf[i]!.length?'#9c9':'#fff'}" stroke="#000" stroke-width="0.6"/>`).join('\n');
    writeFileSync(`/tmp/plan-${top.name.replace(/\W+/g,'-')}-${sp}.svg`, `<svg xmlns="http://www.w3.org/2000/svg" width="1000" height="840">${svg}</svg>`);
  } catch (e) { console.log(top.name, sp, String(e)); } }
}
