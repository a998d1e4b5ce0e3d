/** The server as a Node process: the connection from the command line, files from the disk. */
import { join } from 'node:path';
import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { diskFolder } from './disk-folder.js';
import { serve } from './serve.js';
import { translationsIn } from '../wording/translation-files.js';
import { ThreadWorker } from './thread-worker.js';

const translations = translationsIn(join(__dirname, 'wording'));
serve(createConnection(ProposedFeatures.all), diskFolder, new ThreadWorker(), translations);
