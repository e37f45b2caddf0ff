using System.Globalization;

namespace AutoSweep.Core.Tests.Support;

/// <summary>Runs under another culture for as long as it is held.</summary>
internal sealed class Culture : IDisposable
{
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;

    private Culture(string name) => CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);

    /// <summary>German as spoken in Germany: a decimal comma, a point between thousands.</summary>
    public static Culture DecimalComma() => new("de-DE");

    public void Dispose() => CultureInfo.CurrentCulture = _before;
}
