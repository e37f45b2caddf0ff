using AutoSweep.Core;

namespace AutoSweep.Worker.Page.Work;

/// <summary>A job's name as a person types it; it becomes the name of a folder and nothing else.</summary>
public static class JobName
{
    /// <summary>The longest name.</summary>
    public const int Longest = 60;

    /// <summary>What a name may be, in words.</summary>
    public const string Expected = "1 to 60 letters, digits, blanks, hyphens, underscores or points, not beginning with a point and not ending with a point or blank";

    // Names that Windows keeps for devices, with any extension (Naming Files, Paths, and Namespaces; from memory).
    private static readonly HashSet<string> Reserved = new(
        ["CON", "PRN", "AUX", "NUL", .. Enumerable.Range(0, 10).SelectMany(number => new[] { $"COM{number}", $"LPT{number}" })], StringComparer.OrdinalIgnoreCase);

    /// <summary>The name, blanks at its ends taken off.</summary>
    /// <exception cref="BenchFaultException">It cannot be a folder's name here and on other systems.</exception>
    public static string Require(string? typed)
    {
        var name = typed?.Trim() ?? "";
        var isFine = name.Length is > 0 and <= Longest && name[0] != '.' && name[^1] != '.'
            && name.All(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.')
            && !Reserved.Contains(name.Split('.')[0]);
        return isFine ? name : throw new BenchFaultException(BenchFault.BadFile, $"\"{name}\" as the name of a job", Expected, "Type another name.");
    }
}
