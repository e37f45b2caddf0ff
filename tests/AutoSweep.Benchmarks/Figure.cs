using System.Globalization;

namespace AutoSweep.Benchmarks;

/// <summary>One measured figure and what it must not exceed.</summary>
/// <param name="Name">Dotted, lower case, with its unit: fixed for scripts.</param>
/// <param name="Value">What was measured.</param>
/// <param name="Target">The most that is allowed.</param>
internal sealed record Figure(string Name, double Value, double Target)
{
    internal bool IsShort => !(Value <= Target);

    /// <summary>The line for scripts.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"figure\t{Name}\t{Value:0.######}\t{Target:0.######}\t{(IsShort ? "short" : "ok")}");
}
