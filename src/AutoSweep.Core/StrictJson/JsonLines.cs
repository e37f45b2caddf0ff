using System.Text;
using System.Text.Json;

namespace AutoSweep.Core.StrictJson;

/// <summary>On which line of a JSON text each field stands, so that a fault can name it.</summary>
/// <remarks>The serializer knows lines only for its own complaints, and not for a check that compares two fields.</remarks>
internal sealed class JsonLines
{
    private readonly byte[] _text;
    private readonly Dictionary<string, int> _lines = [];
    private int _countedTo;
    private int _line = 1;

    private JsonLines(byte[] text) => _text = text;

    /// <summary>The first field that stands twice in one object, or none.</summary>
    public JsonFieldFault? Repeated { get; private set; }

    /// <summary>Walks a text once.</summary>
    /// <exception cref="JsonException">The text is not JSON.</exception>
    public static JsonLines Of(string text)
    {
        var lines = new JsonLines(Encoding.UTF8.GetBytes(text));
        var reader = new Utf8JsonReader(lines._text);
        reader.Read();
        lines.Note(ref reader, JsonFieldPath.Root);
        lines.Walk(ref reader, JsonFieldPath.Root);
        reader.Read();
        return lines;
    }

    /// <summary>The exception for a fault, with the line on which the field, or else what holds it, stands.</summary>
    public BenchFaultException Fault(string file, JsonFieldFault fault)
    {
        var where = _lines.TryGetValue(fault.Path, out var line) ? $"{file}, line {line}" : file;
        var field = fault.Path == JsonFieldPath.Root ? "" : $" {fault.Path}:";
        return new(BenchFault.BadFile, $"{where}:{field} {fault.Found}", fault.Expected, fault.WhatToDo);
    }

    private void Walk(ref Utf8JsonReader reader, string path)
    {
        if (reader.TokenType == JsonTokenType.StartObject)
            WalkFields(ref reader, path);
        else if (reader.TokenType == JsonTokenType.StartArray)
            WalkItems(ref reader, path);
    }

    private void WalkFields(ref Utf8JsonReader reader, string path)
    {
        while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
        {
            var field = JsonFieldPath.Field(path, reader.GetString()!);
            Note(ref reader, field);
            reader.Read();
            Walk(ref reader, field);
        }
    }

    private void WalkItems(ref Utf8JsonReader reader, string path)
    {
        for (var index = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; index++)
        {
            var item = JsonFieldPath.Item(path, index);
            Note(ref reader, item);
            Walk(ref reader, item);
        }
    }

    private void Note(ref Utf8JsonReader reader, string path)
    {
        var start = (int)reader.TokenStartIndex;
        _line += _text.AsSpan(_countedTo, start - _countedTo).Count((byte)'\n');
        _countedTo = start;
        if (!_lines.TryAdd(path, _line))
            Repeated ??= new(path, $"the field stands on line {_lines[path]} and again on line {_line}", "each field once",
                "Remove one of the two.");
    }
}
