package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// Folders below the root, none of them kept in version control but the pictures.
const (
	buildFolder    = "build"
	logFolder      = "build/log"
	homeFolder     = "build/home"
	tourFolder     = "build/demo-consultation"
	picturesFolder = "assets/pictures"
)

// displayReady tells the journey that DISPLAY leads to a display made for it.
const displayReady = "HANDBREADTH_DISPLAY_READY=1"

// enterRoot changes to the root of the module.
func enterRoot() error {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return fmt.Errorf("go env GOMOD: %w", err)
	}
	file := strings.TrimSpace(string(out))
	if file == "" || file == os.DevNull {
		return errors.New("run this inside the checkout of Handbreadth")
	}
	return os.Chdir(filepath.Dir(file))
}

// goEnv returns a setting of the go command.
func goEnv(name string) (string, error) {
	out, err := exec.Command("go", "env", name).Output()
	if err != nil {
		return "", fmt.Errorf("go env %s: %w", name, err)
	}
	return strings.TrimSpace(string(out)), nil
}

// replaced returns an environment with settings put in: "NAME=value" sets,
// "NAME" alone takes away.
func replaced(environment []string, settings ...string) []string {
	drop := map[string]bool{}
	var set []string
	for _, setting := range settings {
		name, _, given := strings.Cut(setting, "=")
		drop[name] = true
		if given {
			set = append(set, setting)
		}
	}
	var kept []string
	for _, entry := range environment {
		if name, _, _ := strings.Cut(entry, "="); !drop[name] {
			kept = append(kept, entry)
		}
	}
	return append(kept, set...)
}

// language makes programs speak British English. The window library logs an
// error under C and C.UTF-8; it needs the name only, not the locale itself,
// while C libraries take the character set from a locale that is always there.
func language() []string {
	return []string{"LANG=en_GB.UTF-8", "LC_CTYPE=C.UTF-8", "LC_ALL", "LC_MESSAGES", "LANGUAGE"}
}

// apart is the environment for checks and measurements: the language is set,
// and programs see an empty home folder instead of that of the person at work.
// The go command keeps its own caches.
func apart() ([]string, error) {
	home, err := filepath.Abs(homeFolder)
	if err != nil {
		return nil, err
	}
	if err := os.RemoveAll(home); err != nil {
		return nil, err
	}
	if err := furnish(home); err != nil {
		return nil, err
	}
	settings := append(language(), "HOME="+home, "STATICCHECK_CACHE="+filepath.Join(filepath.Dir(home), "staticcheck"), "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME")
	for _, name := range []string{"GOENV", "GOPATH", "GOCACHE", "GOMODCACHE"} {
		value, err := goEnv(name)
		if err != nil {
			return nil, err
		}
		settings = append(settings, name+"="+value)
	}
	return replaced(os.Environ(), settings...), nil
}

// userFolders are the folders that a desktop's home has; the window library
// logs an error where one is not defined.
var userFolders = []string{"Desktop", "Documents", "Downloads", "Music", "Pictures", "Videos"}

// furnish makes a home folder with the folders of a desktop.
func furnish(home string) error {
	config := filepath.Join(home, ".config")
	if err := os.MkdirAll(config, 0o700); err != nil {
		return err
	}
	var lines strings.Builder
	for _, name := range userFolders {
		if err := os.Mkdir(filepath.Join(home, name), 0o700); err != nil {
			return err
		}
		key := strings.ToUpper(name)
		if name == "Downloads" {
			key = "DOWNLOAD" // the one that the standard names in the singular
		}
		fmt.Fprintf(&lines, "XDG_%s_DIR=\"$HOME/%s\"\n", key, name)
	}
	return os.WriteFile(filepath.Join(config, "user-dirs.dirs"), []byte(lines.String()), 0o600)
}

// executable is the name of a built program on the present system.
func executable(name string) string {
	if runtime.GOOS == "windows" {
		return filepath.Join(buildFolder, name+".exe")
	}
	return filepath.Join(buildFolder, name)
}
