/** The program as it is started, bundled under a name of its own so that no other test builds it anew meanwhile. */
import '../../language/cli/main.js';
