using System.Text;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>Has a conversation with a meter that is there, and writes it down as a session file.</summary>
/// <param name="player">Makes the calls.</param>
/// <param name="link">Keeps what goes over the wire.</param>
public sealed class SessionRecorder(SessionPlayer player, RecordingLink link)
{
    private readonly StringBuilder _text = new();

    /// <summary>The session so far.</summary>
    public string Text => _text.ToString();

    /// <summary>Writes a remark.</summary>
    public void Remark(string text) => _text.Append(System.Globalization.CultureInfo.InvariantCulture, $"# {text}\n");

    /// <summary>Makes a call and writes down what it put on the wire and what came of it.</summary>
    /// <param name="call">As in <see cref="SessionPlayer.PlayAsync"/>.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>What came of it.</returns>
    /// <exception cref="Core.BenchFaultException">The meter is in trouble.</exception>
    public async Task<string?> RecordAsync(string call, CancellationToken cancellationToken)
    {
        link.TakeLines();
        var outcome = await player.PlayAsync(call, cancellationToken);
        _text.Append(System.Globalization.CultureInfo.InvariantCulture, $"\n! {call}\n");
        foreach (var line in link.TakeLines())
            _text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{line}\n");
        if (outcome is not null)
            _text.Append(System.Globalization.CultureInfo.InvariantCulture, $"= {outcome}\n");
        return outcome;
    }
}
