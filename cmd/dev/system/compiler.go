package system

import (
	"errors"
	"fmt"
	"os/exec"
	"strings"
)

// Compiler checks, on systems other than Linux, that there is a C compiler for
// the window library, and says in plain words how to get one.
//
// System is as in runtime.GOOS, compiler as in "go env CC".
func Compiler(system, compiler string) error {
	return compilerError(system, compiler, func(name string, arguments ...string) bool {
		if len(arguments) == 0 {
			_, err := exec.LookPath(name)
			return err == nil
		}
		return exec.Command(name, arguments...).Run() == nil
	})
}

// compilerError does the work of Compiler; works reports whether a program is
// there or, with arguments, whether it ends well.
func compilerError(system, compiler string, works func(string, ...string) bool) error {
	name, _, _ := strings.Cut(compiler, " ")
	switch system {
	case "windows":
		if !works(name) {
			return fmt.Errorf("no C compiler is found (%s), and the window library needs one.\n"+
				"Install gcc from MinGW-w64: get MSYS2, open its UCRT64 window and run\n"+
				"  pacman -S mingw-w64-ucrt-x86_64-gcc\n"+
				"then add its folder ucrt64\\bin to PATH and try again", name)
		}
	case "darwin":
		// The system has a stand-in for clang that only asks to install it.
		if !works("xcode-select", "-p") {
			return errors.New("no C compiler is found, and the window library needs one.\n" +
				"Install Apple's command line tools and try again:\n  xcode-select --install")
		}
	default:
		if !works(name) {
			return fmt.Errorf("no C compiler is found (%s), and the window library needs one; install gcc or clang and try again", name)
		}
	}
	return nil
}
