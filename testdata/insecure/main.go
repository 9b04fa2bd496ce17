// Command insecure does what no program here should: a file with records of
// people that everybody on the computer can read. It shows that the check for
// such habits finds them.
package main

import "os"

func main() {
	if err := os.WriteFile("records.txt", nil, 0o666); err != nil {
		panic(err)
	}
}
