package pdf

import (
	"bytes"
	"crypto/md5"
	"errors"
	"fmt"
)

// What can keep attached files from being got out.
var (
	errNotPDF        = errors.New("not a PDF file")
	errEncrypted     = errors.New("the PDF is encrypted; save it without a password first")
	errNoAttachments = errors.New("the PDF has no files attached")
)

// Attachments returns the files attached to a PDF, in the order of the document's list. It reads what Write wrote and what common tools make of that
// when they save it again: packed objects, cross-reference streams, updates appended, damaged tables. An attached file whose checksum does not match is an error.
func Attachments(data []byte) ([]Attachment, error) {
	if !bytes.Contains(data[:min(len(data), 1024)], []byte("%PDF-")) {
		return nil, errNotPDF
	}
	s := scanFile(data)
	if s.locked {
		return nil, errEncrypted
	}
	root, _ := s.resolve(s.root).(dict)
	if root == nil {
		return nil, fmt.Errorf("%w: it has no catalog", errNotPDF)
	}
	names, _ := s.resolve(root["Names"]).(dict)
	var specs []any
	visits := mostAttached
	s.nameTree(names["EmbeddedFiles"], &visits, &specs)
	if len(specs) == 0 {
		specs, _ = s.resolve(root["AF"]).(array)
	}
	var out []Attachment
	for _, spec := range specs {
		a, err := s.attachment(spec)
		if err != nil {
			return nil, fmt.Errorf("attached file %q: %w", a.Name, err)
		}
		out = append(out, a)
	}
	if len(out) == 0 {
		return nil, errNoAttachments
	}
	return out, nil
}

// mostAttached bounds the nodes of a name tree that are looked at, so that a tree that holds itself comes to an end.
const mostAttached = 4096

// nameTree gathers the values of a name tree (7.9.6).
func (s *scan) nameTree(node any, visits *int, values *[]any) {
	d, _ := s.resolve(node).(dict)
	if *visits--; d == nil || *visits < 0 {
		return
	}
	pairs, _ := s.resolve(d["Names"]).(array)
	for i := 1; i < len(pairs) && len(*values) < mostAttached; i += 2 {
		*values = append(*values, pairs[i])
	}
	kids, _ := s.resolve(d["Kids"]).(array)
	for _, kid := range kids {
		s.nameTree(kid, visits, values)
	}
}

// attachment reads a file specification (7.11.3) and the file embedded under it.
func (s *scan) attachment(o any) (Attachment, error) {
	var a Attachment
	spec, _ := s.resolve(o).(dict)
	for _, key := range []name{"UF", "F"} {
		if t, ok := s.resolve(spec[key]).(text); ok && a.Name == "" {
			a.Name = t.string()
		}
	}
	described, _ := s.resolve(spec["Desc"]).(text)
	relationship, _ := s.resolve(spec["AFRelationship"]).(name)
	a.Description, a.Relationship = described.string(), string(relationship)
	files, _ := s.resolve(spec["EF"]).(dict)
	for _, key := range []name{"UF", "F"} {
		st, ok := s.resolve(files[key]).(streamObject)
		if !ok {
			continue
		}
		kind, _ := s.resolve(st.dict["Subtype"]).(name)
		a.MIME = string(kind)
		var err error
		if a.Data, err = s.decode(st); err != nil {
			return a, err
		}
		params, _ := s.resolve(st.dict["Params"]).(dict)
		if sum, ok := s.resolve(params["CheckSum"]).(text); ok && len(sum) == md5.Size {
			if got := md5.Sum(a.Data); !bytes.Equal(got[:], sum) {
				return a, errors.New("damaged: its checksum does not match")
			}
		}
		return a, nil
	}
	return a, errors.New("its data are missing")
}
