// Package vault keeps the practice's secrets: it seals values, holds the key
// that seals them under a passphrase and a recovery code, and writes sealed
// containers for backups. It knows neither the database nor a file: it takes
// bytes and gives bytes.
//
// # What a secret is, and where it is
//
//	passphrase ──scrypt──▶ identity P ─┐
//	                                   ├─▶ data key ──▶ every sealed value
//	recovery code ─scrypt─▶ identity R ┘           └──▶ every container
//
// The data key is 32 random bytes. It seals everything, and nobody ever sees it.
// It is wrapped as a small age file (filippo.io/age) for two identities, each a
// key pair of its own. The passphrase wraps the private half of the one, the
// recovery code that of the other, both as age files with a passphrase. All of
// that is the key ring ([Ring]), which lies in the file in clear: it is of no use
// without one of the two secrets.
//
// Why two identities, and not simply the data key wrapped twice? Because of
// rotation. Whoever knows an old passphrase and has an old copy of the file has
// the old data key, and nothing takes that back. A new data key helps only when
// the old secrets do not lead to it; yet at the moment of rotation the recovery
// code lies in a drawer. With identities the new key is wrapped for the public
// halves of today's passphrase and today's code, without knowing either. The
// public halves are sealed with the data key, so that a stranger can neither
// read them nor put in one of their own; nor can somebody who records backups
// today and has a quantum computer later attack them, for they never see them.
//
// # A day with keys
//
//	keys, code, err := vault.Create(passphrase, 0) // a new practice
//	show(code.Groups())                            // once, to be printed
//	write(keys.Ring().Bytes())                     // into the file
//
//	ring, err := vault.ParseRing(read())           // the next morning
//	keys, err := ring.Unlock(passphrase)           // takes about a second
//	sealed, err := keys.Seal("record", row, "body", 3, plain)
//	plain, err := keys.Open("record", row, "body", 3, sealed)
//	keys.Lock()                                    // lunch
//
// A Ring is never changed. What changes it ([Keys.WithPassphrase],
// [Keys.WithRecoveryCode], [Keys.WithNewKey], [Keys.WithOnlyCurrent]) returns
// new Keys; the old ones go on working until the new ring is in the file, and
// are then locked. So a write that fails leaves everything as it was.
//
// # A sealed value
//
//	02 | key id (4 bytes) | nonce (24) | ciphertext | tag (16)
//
// It is XChaCha20-Poly1305 with a random nonce: 192 bits never repeat, however
// many values a practice seals. The associated data is the mark 02, the key id,
// and the place: table, row and column, each with its length (4 bytes,
// big-endian) before it, and the version (8 bytes, big-endian). A value that was
// moved to another client, column or version does not open ([ErrValue]). The key
// id tells which key to take while two are in use, and [ErrKey] tells a value of
// another key from a damaged one. How long a value is, how many there are and
// when they change is not hidden.
//
// # Rotation
//
// [Keys.WithNewKey] gives a ring with two keys: new values take the new one, old
// ones still open. Seal one value after the other anew ([KeyOf] tells which need
// it), stop whenever you like, and call [Keys.WithOnlyCurrent] when none is left.
//
// # The passphrase
//
// [Advise] looks at length and at how common it is, and never asks for capitals,
// digits or signs. A passphrase is used composed (NFKC) and without blanks at
// its ends, so that it is the same on every keyboard. How much work a try is
// ([Effort]) is measured when the passphrase is set, so that unlocking takes
// about a second on this machine, and never less than 128 MB or more than 512 MB
// of memory; it is written in the ring, and a ring that asks for more than 2 GB
// is refused.
//
// [Tries] slows down somebody at this keyboard: three wrong passphrases are
// free, then the wait doubles from two seconds to five minutes. It is a pure
// function of the count and two moments; keep it in the file. A clock that was
// set back starts the wait anew once, and never makes it longer.
//
// # The recovery code
//
// [RecoveryCode] has 29 random letters (131 bits) of an alphabet without I, Q
// and V, and without digits, so that nothing can be taken for anything else, and
// three letters that check them. [ParseRecoveryCode] reads it as people type it
// and tells a slip ([CodeProblem], with words) from the code of another file
// ([ErrCode]): a slip costs nothing and is not counted.
//
// # Containers
//
// [Keys.NewWriter] encrypts a stream, [OpenContainer] reads it. A container
// carries its own ring, so that the recovery code alone opens it on another
// machine, and its body is an age file: encrypted in chunks of 64 kB that cannot
// be left out, exchanged or cut off. The keys of the open file open it as well,
// so that a backup can be verified without asking anybody anything. After a
// rotation an older container opens with the passphrase or the code of its day.
//
// Nobody depends on this program to get at a backup. With the age program, some
// patience and the recovery code (its 32 letters, without blanks):
//
//	sed -n 3p container | jq -r .recovery | base64 -d | age -d > identity
//	tail -n +4 container | age -d -i identity > content
//
// # What is left in memory
//
// [Keys.Lock] overwrites the keys and gives freed memory back to the system. A
// test on Linux looks through all of the program's memory and does not find the
// key afterwards; the language gives no guarantee. A passphrase is a Go string
// and cannot be overwritten at all: let go of it.
package vault
