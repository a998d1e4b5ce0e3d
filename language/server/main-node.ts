/** The server as a Node process: the connection from the command line, files from the disk. */
import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { diskFolder } from './disk-folder.js';
import { serve } from './serve.js';
import { ThreadWorker } from './thread-worker.js';

serve(createConnection(ProposedFeatures.all), diskFolder, new ThreadWorker());
