using AutoSweep.Core;

namespace AutoSweep.Worker.Bench;

/// <summary>Tells a silent instrument that is worth waiting for from one that is silent at the same work each time.</summary>
internal sealed class SilenceCount
{
    // An instrument that answers whenever it is opened anew, and is silent at the same work each time, is not unplugged: something is wrong
    // that waiting does not mend. A loose plug shows as a broken link, and is waited for without end.
    private const int MostSilences = 3;

    private int _silences;

    /// <summary>The instrument has answered with a reading: it works.</summary>
    public void Answered() => _silences = 0;

    /// <summary>Whether it has been silent too often with this fault, no answer between.</summary>
    public bool IsFull(BenchFaultException fault) => fault.Kind == BenchFault.NoAnswer && ++_silences == MostSilences;
}
