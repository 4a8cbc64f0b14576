using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Pictures;

namespace TrialLog.Reports.Documents;

/// <summary>
/// A page as it is meant, before it becomes HTML, Markdown or plain text: every format says the same because every
/// format is written from this.
/// </summary>
/// <param name="Title">Its one title.</param>
/// <param name="Subtitle">A line below the title.</param>
/// <param name="Sections">What follows, in order.</param>
/// <param name="Footer">The last line: version and date.</param>
internal sealed record Document(string Title, string Subtitle, IReadOnlyList<Section> Sections, string Footer)
{
    /// <summary>What is only looked up: folded on a screen, on sheets of its own on paper, and named in a list before it.</summary>
    public IReadOnlyList<Section> Appendices { get; init; } = [];

    /// <summary>The sections and the appendices, for formats that fold nothing.</summary>
    public IEnumerable<Section> All => Sections.Concat(Appendices);
}

/// <summary>A part of a page under its own heading.</summary>
internal sealed record Section(string Heading, params IReadOnlyList<Block> Blocks)
{
    /// <summary>Whether it begins a sheet of its own on paper.</summary>
    public bool BeginsASheet { get; init; }
}

/// <summary>What a section is made of. All text in a block is plain: markup in it is only ever text.</summary>
internal abstract record Block
{
    /// <summary>The block, or its parts where they stand side by side: for formats that have no side by side.</summary>
    public virtual IEnumerable<Block> OneByOne => [this];
}

/// <summary>Some sentences. A line feed in the text is a line break.</summary>
/// <param name="Text">The sentences.</param>
/// <param name="Answers">Whether this is the answer that the page is about, to be set larger.</param>
internal sealed record Paragraph(string Text, bool Answers = false) : Block;

/// <summary>A heading below the section's own.</summary>
internal sealed record Subheading(string Text) : Block;

/// <summary>Figures with their labels.</summary>
internal sealed record Facts(IReadOnlyList<Fact> Items) : Block;

/// <summary>A labelled figure.</summary>
internal sealed record Fact(string Label, string Value, string? Meaning = null);

/// <summary>Several sentences, each on its own.</summary>
/// <param name="Items">The sentences.</param>
/// <param name="Warn">Whether they are cautions.</param>
internal sealed record Bullets(IReadOnlyList<string> Items, bool Warn = false) : Block;

/// <summary>Rows and columns.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">The rows, a cell a column.</param>
/// <param name="Stacks">Whether on a phone each row becomes a block of labelled lines instead of running off to the right.</param>
internal sealed record Table(string Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<string>> Rows, bool Stacks = false)
    : Block;

/// <summary>A column: its name and whether it holds numbers, which align to the right.</summary>
internal sealed record Column(string Name, bool Number = false);

/// <summary>A picture with its caption.</summary>
internal sealed record Figure(Picture Picture) : Block;

/// <summary>What somebody wrote, and who and when.</summary>
internal sealed record Quotation(string By, string Text) : Block;

/// <summary>Trial cards to be cut out and filled in by hand.</summary>
internal sealed record Cards(IReadOnlyList<CardToFill> Items) : Block;

/// <summary>One trial card with room to write.</summary>
/// <param name="Heading">For whom.</param>
/// <param name="Plan">Distance, effort, rest.</param>
/// <param name="Lengths">The lengths in order.</param>
/// <param name="Reason">Why these.</param>
/// <param name="Caution">What to look out for, if anything.</param>
internal sealed record CardToFill(string Heading, string Plan, IReadOnlyList<string> Lengths, string Reason, string? Caution);

/// <summary>Lengths in the order to paddle them, to be read at arm's length on a phone.</summary>
internal sealed record LargeLengths(IReadOnlyList<string> Items) : Block;

/// <summary>Pictures that may stand side by side; the first is the one to look at first, and the largest on paper.</summary>
internal sealed record PictureRow(IReadOnlyList<Figure> Items) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<Block> OneByOne => Items;
}

/// <summary>A picture with a card beside it, where there is room.</summary>
internal sealed record PictureAndCard(Figure Picture, Cards Card) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<Block> OneByOne => [Picture, Card];
}
