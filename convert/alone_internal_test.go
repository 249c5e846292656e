package convert

import (
	"context"
	"path/filepath"
	"testing"

	"fieldfare/convert/answers"
	"fieldfare/convert/stage"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestInterruptWhileWaiting: who gives up while another run has the folder of
// the remembered answers gets no note that they could not be kept, but an end.
func TestInterruptWhileWaiting(t *testing.T) {
	folder := t.TempDir()
	release, err := stage.Hold(filepath.Join(folder, aloneFile))
	require.NoError(t, err)
	defer release()
	s := &settings{answers: &answers.Set{}, answered: answered{path: filepath.Join(folder, answers.FileName)}}
	s.answers.Give(answers.Answer{Key: answers.Key{About: "name", Written: "mine"}, Decision: answers.Replace, Value: "Flame"})
	require.True(t, s.answers.Changed())
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	notes, err := s.remember(ctx, Job{})
	assert.ErrorIs(t, err, context.Canceled)
	assert.Empty(t, notes)
	assert.NoFileExists(t, s.answered.path)
}
