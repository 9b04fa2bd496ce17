// Command batch does the work without a window: a consult file in, a plan file
// and the client's paper out.
//
//	batch -consult FILE.json [-plan OUT.json] [-handout OUT.pdf]
//	      [-paper a4|letter] [-units metric|us|uk] [-practice NAME]
//
// Exit status: 0 issued; 2 something given cannot be used, one line a problem;
// 3 referred, the note to the clinician takes the handout's place; 4 held until
// a reason is given. With 2 and 4 no file is written or changed.
package main

import (
	"os"

	"handbreadth/reports"
)

func main() {
	d := desk{
		stdout: os.Stdout, stderr: os.Stderr, disk: osFiles{},
		handout: reports.Handout, referral: reports.Referral,
	}
	os.Exit(d.run(os.Args[1:]))
}
