/** The server as a Node process: the connection from the command line, files from the disk or through the editor. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { PlanFiles } from '../reports/plan/plan-file.js';
import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { diskFolder } from './disk-folder.js';
import { editorFolder, eitherFolder } from './editor-folder.js';
import { serve } from './serve.js';
import { translationsIn } from '../wording/translation-files.js';
import { ThreadWorker } from './thread-worker.js';
import { beThrifty } from './thrift.js';

beThrifty();
const connection = createConnection(ProposedFeatures.all);
const folder = eitherFolder(diskFolder, editorFolder(connection));
// Large libraries that only a file for a machine or for paper needs: a program of its own, loaded when one is asked for.
const planFiles = () => import(pathToFileURL(join(__dirname, 'plan-files.cjs')).href) as Promise<PlanFiles>;
serve(connection, folder, new ThreadWorker(), translationsIn(join(__dirname, 'wording')), planFiles);
