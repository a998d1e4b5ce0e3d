/** Replaces the file that is named, which held the test's old text, and prints what came in the way. */
import { replaceFile } from '../../language/disk/replace-file.js';

const [file = ''] = process.argv.slice(2);
console.log(await replaceFile(file, Buffer.from('old\r\ntext\n'), Buffer.from('new')));
