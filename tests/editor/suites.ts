// The suites that run inside an editor, in the node and in the web extension host alike.
import './opening.suite.js';
import './language.suite.js';
import './rules.suite.js';
import './preview.suite.js';
import './side-by-side.suite.js';
