using System.Text.Json;

namespace AutoSweep.Core.StrictJson;

/// <summary>A JSON file that people write by hand, read so that no typing error passes unseen.</summary>
/// <remarks>
/// Fields are camelCase and exact; unknown, repeated, missing and null fields, wrong types, unknown words and numbers outside a
/// <see cref="System.ComponentModel.DataAnnotations.RangeAttribute"/> are faults that name file, line and field. Comments and
/// trailing commas are not allowed. What one field says of another is left to the caller, who reports it with
/// <see cref="CheckedJsonFile{T}.Fault"/>.
/// </remarks>
public static class StrictJsonFile
{
    /// <summary>Reads and checks a file.</summary>
    /// <typeparam name="T">The record that the file describes.</typeparam>
    /// <param name="path">The file.</param>
    /// <exception cref="BenchFaultException">The file is missing, cannot be read or breaks the format.</exception>
    public static CheckedJsonFile<T> Read<T>(string path) => Parse<T>(TextOf(path), path);

    /// <summary>Checks a file whose text is at hand.</summary>
    /// <typeparam name="T">The record that the file describes.</typeparam>
    /// <param name="text">The JSON text.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <exception cref="BenchFaultException">The text breaks the format.</exception>
    public static CheckedJsonFile<T> Parse<T>(string text, string name)
    {
        try
        {
            var lines = JsonLines.Of(text);
            using var document = JsonDocument.Parse(text);
            var root = StrictJsonOptions.Shared.GetTypeInfo(typeof(T));
            if ((lines.Repeated ?? new JsonShape().FirstFault(document.RootElement, root)) is { } fault)
                throw lines.Fault(name, fault);
            return new CheckedJsonFile<T>(name, document.Deserialize<T>(StrictJsonOptions.Shared)!, lines);
        }
        catch (JsonException broken)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"{name}, line {broken.LineNumber + 1}: {Plain(broken)}", "a JSON text",
                "Look at that line and the one before it: a comma, a quote or a bracket is the usual cause. Comments are not allowed.",
                broken);
        }
    }

    private static string TextOf(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception unread) when (unread is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"{path}: {unread.Message}", "a JSON file that can be read",
                "Check the name, the folder and the permissions.", unread);
        }
    }

    // The reader ends its messages with a line number counted from 0, which would contradict ours.
    private static string Plain(JsonException broken) => broken.Message.Split(" LineNumber:")[0].Split(" Path:")[0];
}
