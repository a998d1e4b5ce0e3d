/** A value as recipe text, the numbers in it written by whoever asks: as they stand, in one unit, or for comparing. */
import type { QuantityValue, Value } from '../../facts/facts.js';

export function valueText(value: Value, number: (one: QuantityValue) => string): string {
  switch (value.kind) {
    case 'quantity':
      return number(value);
    case 'range':
      if (!value.low) return value.high ? `below ${number(value.high)}` : 'unknown';
      return value.high ? `${number(value.low)}..${number(value.high)}` : `above ${number(value.low)}`;
    case 'size':
      return value.parts.map(number).join(' x ');
    case 'point':
      return `(${number(value.station)}, ${number(value.offset)})`;
    case 'list':
      return value.items.map((item) => valueText(item, number)).join(', ');
    case 'text':
      return `"${value.text.replace(/["\\]/g, '\\$&')}"`;
    case 'name':
      return value.name;
    case 'date':
      return value.date;
    case 'unknown':
      return 'unknown';
    case 'unreadable':
      return value.written;
  }
}
