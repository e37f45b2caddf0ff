using System.Threading.Channels;

namespace AutoSweep.Worker.Parts;

/// <summary>What the person says of the old capacitor that is asked for, instead of putting it on the clips.</summary>
public sealed class OldSetWords
{
    private readonly Channel<(int Output, OldSetWord Word)> _said = Channel.CreateUnbounded<(int, OldSetWord)>();

    // None before the first: outputs count from one.
    private volatile int _asked;

    /// <summary>Takes down which output's is asked for, before the person is told.</summary>
    public void AskFor(int output) => _asked = output;

    /// <summary>Says it of the one that is asked for; before the first it is said of none.</summary>
    public void Say(OldSetWord word)
    {
        if (_asked is > 0 and var output)
            Say(output, word);
    }

    /// <summary>Says it.</summary>
    /// <param name="output">The output that was asked for when it was said: a word that comes late, or twice, is none of the next one's.</param>
    /// <param name="word">What is said.</param>
    public void Say(int output, OldSetWord word) => _said.Writer.TryWrite((output, word));

    /// <summary>Waits for a word on the capacitor that is asked for.</summary>
    /// <param name="cancellationToken">Ends the wait.</param>
    public async Task<OldSetWord> NextAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var said = await _said.Reader.ReadAsync(cancellationToken);
            if (said.Output == _asked)
                return said.Word;
        }
    }
}
