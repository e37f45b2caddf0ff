namespace AutoSweep.Worker.Stock;

/// <summary>Where the shop's stock lies.</summary>
public static class DataFolder
{
    /// <summary>The ledger's name in a data folder.</summary>
    public const string LedgerName = "stock.jsonl";

    /// <summary>
    /// The data folder of this user: <c>%LOCALAPPDATA%\AutoSweep</c> on Windows, <c>~/.local/share/AutoSweep</c> on Linux (XDG Base
    /// Directory
    /// Specification), <c>~/Library/Application Support/AutoSweep</c> on macOS. Several benches share a ledger by naming one folder.
    /// </summary>
    public static string Default { get; } =
        Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify), "AutoSweep");

    /// <summary>The ledger that a flag names: a file, a folder that holds one, or none for the default.</summary>
    public static string LedgerAt(string? named) =>
        named is null ? Path.Combine(Default, LedgerName)
        : named.EndsWith(".jsonl", StringComparison.Ordinal) ? named : Path.Combine(named, LedgerName);
}
