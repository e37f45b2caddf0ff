using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Terminal;

/// <summary>What a person types, while the old set is read, of a capacitor that is not put on the clips.</summary>
/// <param name="words">Who listens.</param>
public sealed class OldSetLines(OldSetWords words)
{
    /// <summary>What there is to type.</summary>
    public const string Known = "x and Enter: no capacitor any more. s and Enter: left out for now. q and Enter: ends.";

    /// <summary>Understands a line and says it of the capacitor that is asked for.</summary>
    /// <returns>Whether the line was a word.</returns>
    public bool Take(string line)
    {
        OldSetWord? word = line.Trim().ToUpperInvariant() switch
        {
            "X" => OldSetWord.NoCapacitor,
            "S" => OldSetWord.LeftOut,
            "Q" => OldSetWord.Ended,
            _ => null,
        };
        if (word is { } said)
            words.Say(said);
        return word is not null;
    }

    /// <summary>Listens beside a meter that reads by itself, until the input ends. A line that is no word is answered with what is known.</summary>
    /// <param name="input">Where the lines come from.</param>
    /// <param name="output">Where the answers go.</param>
    /// <param name="cancellationToken">Ends the listening.</param>
    public async Task ListenAsync(TextReader input, TextWriter output, CancellationToken cancellationToken)
    {
        // The console's own reader blocks whatever the token says; the wait for it does not.
        while (await Task.Run(input.ReadLine, CancellationToken.None).WaitAsync(cancellationToken) is { } line)
        {
            if (!Take(line))
                await output.WriteLineAsync($"  >> '{line.Trim()}' is not known here: the meter reads the values. {Known}");
        }
    }
}
