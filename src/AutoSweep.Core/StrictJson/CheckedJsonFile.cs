namespace AutoSweep.Core.StrictJson;

/// <summary>A hand-written JSON file that <see cref="StrictJsonFile"/> found in order, field by field.</summary>
/// <typeparam name="T">The record that the file describes.</typeparam>
public sealed class CheckedJsonFile<T>
{
    private readonly JsonLines _lines;

    internal CheckedJsonFile(string name, T value, JsonLines lines) => (Name, Value, _lines) = (name, value, lines);

    /// <summary>The file's name, as messages give it.</summary>
    public string Name { get; }

    /// <summary>What the file says.</summary>
    public T Value { get; }

    /// <summary>The exception for a fault that a check of the caller's found, with the line on which the field stands.</summary>
    /// <param name="fault">The field and what is wrong with it.</param>
    public BenchFaultException Fault(JsonFieldFault fault) => _lines.Fault(Name, fault);
}
