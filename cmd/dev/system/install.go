package system

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
)

// InstallCommand is the command line that a person types to install needs.
func InstallCommand(needs []Need) string {
	return "sudo apt-get update && sudo apt-get install -y --no-install-recommends " +
		strings.Join(packages(needs), " ")
}

// ByHand says what is missing and how to get it, for a machine on which this
// program may not install anything. Apt says whether apt-get is there.
func ByHand(needs []Need, apt bool) error {
	if apt {
		return fmt.Errorf("these packages are missing, and only root may install them:\n%srun this, then try again:\n  %s",
			List(needs), InstallCommand(needs))
	}
	return fmt.Errorf("these are missing (named as Debian and Ubuntu name them; look for the like in your system):\n%s", List(needs))
}

// Ensure installs what is missing of the needs: it says what and why, and runs
// apt-get where it is there and this program runs as root. The error says what
// to do by hand, or what is still missing.
func Ensure(ctx context.Context, out io.Writer, needs ...[]Need) error {
	missing := Machine{}.Missing(needs...)
	if len(missing) == 0 {
		fmt.Fprintln(out, "All system packages are there.")
		return nil
	}
	_, err := exec.LookPath("apt-get")
	apt := err == nil
	if !apt || os.Geteuid() != 0 {
		return ByHand(missing, apt)
	}
	fmt.Fprintf(out, "Installing with apt-get, as they are missing:\n%s", List(missing))
	if err := install(ctx, out, missing); err != nil {
		return err
	}
	if still := (Machine{}).Missing(needs...); len(still) > 0 {
		return fmt.Errorf("apt-get finished, yet these are not found:\n%s", List(still))
	}
	return nil
}

// install brings the lists up to date and installs. Old lists may still do, so
// only the installing itself decides.
func install(ctx context.Context, out io.Writer, missing []Need) error {
	update := aptGet(ctx, out, "update")
	arguments := append([]string{"install", "-y", "--no-install-recommends"}, packages(missing)...)
	if err := aptGet(ctx, out, arguments...); err != nil {
		return errors.Join(
			fmt.Errorf("apt-get could not install %s; is there a network?", strings.Join(packages(missing), ", ")),
			err, update)
	}
	return nil
}

func aptGet(ctx context.Context, out io.Writer, arguments ...string) error {
	command := exec.CommandContext(ctx, "apt-get", arguments...)
	command.Env = append(os.Environ(), "DEBIAN_FRONTEND=noninteractive")
	command.Stdout, command.Stderr = out, out
	if err := command.Run(); err != nil {
		return fmt.Errorf("apt-get %s: %w", arguments[0], err)
	}
	return nil
}
