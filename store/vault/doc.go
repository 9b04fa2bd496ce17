// Package vault keeps the practice's secrets: it seals values, wraps the key
// that seals them, and writes sealed containers.
package vault
