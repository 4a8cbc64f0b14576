using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Entry;

/// <summary>Types an outing, new or logged: what was half typed of each is kept apart, and is there again whatever happens.</summary>
internal sealed class EntryScreen : Screen
{
    private readonly OutingForm _form;
    private readonly KeptDrafts _kept;
    private readonly Dictionary<Guid, TypedOuting> _new = [];
    private readonly Dictionary<Guid, TypedOuting> _changes = [];
    private TypedOuting? _typed;
    private TypingContext? _context;
    private int _contextOf = -1;
    private Guid _paddler;

    public EntryScreen(Session session)
        : base(session)
    {
        _kept = session.Drafts;
        _form = new OutingForm(Look);
        _form.Edited += SaveDraft;
        _form.Done += Save;
        // A field would take these for itself.
        _form.KeyFirst = key => key.IsCtrl && Heed(key);
        Add(_form);
    }

    public override (string Wide, string Narrow) Names => ("Enter the outing", "Enter");

    public override bool Typing => true;

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.S.WithCtrl, "Ctrl+S", Changing ? "save change" : "save", Save) { Also = [Key.F9] },
        new(Key.Z.WithCtrl, "Ctrl+Z", "undo", () => Step(typed => typed.Undo(), "There is nothing to undo here.")),
        new(Key.N.WithCtrl, "Ctrl+N", "add piece",
            () => Then(typed => typed.AddPiece(_form.Here.Piece < 0 ? typed.Draft.Pieces.Count - 1 : _form.Here.Piece))),
        new(Key.Esc, "Esc", "back", Leave),
        new(Key.D.WithCtrl, "Ctrl+D", "drop piece", DropPiece),
        new(Key.Y.WithCtrl, "Ctrl+Y", "redo", () => Step(typed => typed.Redo(), "There is nothing to do again here.")),
        new(Key.Empty, "", Changing ? "forget this change" : "clear all", AskToClear),
    ];

    public override string Explanation =>
        "Here you type what you paddled. The lengths and distances are those of your card; change them where you did otherwise. " +
        "Enter goes from time to effort to the next piece, then to soreness, and from there it saves. Tab visits every field, the arrows " +
            "move up and down.\n\n" +
        "# Time and effort\n" +
        "A time is written 5:32, 5:32.4 or 332s; 532 is read as 5:32 where only that makes sense. Effort is how hard it felt, 0 to 10, " +
            "halves allowed (Borg's CR10 scale): " +
        "3 moderate, 5 hard, 7 very hard. It may stay empty, but with it the log can tell a fast length from a hard push.\n\n" +
        "# Day\n" +
        "2026-05-03, 3 may, sat, today, or -1 for yesterday.\n\n" +
        "# Soreness\n" +
        "Shoulder, elbow or back, 0 for none to 10 for the worst you can imagine. If it hurts, stop; if it stays, see a clinician. " +
        "While it is high, no length is suggested that is longer than those that did not hurt.\n\n" +
        "# Wind, label, notes\n" +
        "Wind is a Beaufort number, 0 to 12. A label tells two outings of one day apart. All may stay empty.\n\n" +
        "# Nothing is lost\n" +
        "What you type is saved as you type it, though it is no part of the log yet. Leave, quit, or lose the terminal: it is here " +
            "when you come back. " +
        "Ctrl+Z goes back step by step. A new outing and each change of a logged one are kept apart.";

    private bool Changing => _typed?.Logged is not null;

    /// <summary>Brings the new outing up, whatever was changed before.</summary>
    public void TypeNew()
    {
        if (_paddler != Guid.Empty && _new.TryGetValue(_paddler, out TypedOuting? typed))
            _typed = typed;
    }

    /// <summary>Puts an outing of the log here to be changed, or goes on with a change of it that was begun.</summary>
    public void Edit(Outing outing)
    {
        // A form in which nothing was typed begins from the outing as it is now.
        if (!_changes.TryGetValue(outing.Id, out TypedOuting? typed) || !typed.IsTouched)
            _changes[outing.Id] = typed = new TypedOuting(TypedOuting.OfLogged(outing, Session.Unit), outing, OutingPrint.Of(outing));
        else
            Session.Shell.Say("This change is as you left it.", Tone.Now);
        _typed = typed;
    }

    /// <summary>The cursor begins at what is missing.</summary>
    public override void Begin()
    {
        base.Begin();
        _form.Begin();
        if (_typed is { IsTouched: true, Logged: null, CanUndo: false })
            Session.Shell.Say("This outing is as you left it.", Tone.Now);
    }

    public override void Refresh()
    {
        if (Session.Chosen is not { } chosen)
            return;
        Session.Want(FindingKind.Analysis);
        LogState state = Session.State;
        if (_contextOf != state.Version || _paddler != chosen.Paddler.Id || _context!.Today != Session.Today)
        {
            _context = new TypingContext(chosen.Paddler, state.Hulls, state.Paddles, state.Outings, Session.Today)
            {
                Letters = TypingContext.LettersOf(state.OpenCard),
            };
            (_contextOf, bool another) = (state.Version, _paddler != chosen.Paddler.Id);
            _paddler = chosen.Paddler.Id;
            if (another)
                TakeKept(state);
        }

        // Before the answer is there a blind card must not show its lengths either.
        bool blind = Session.Analysis is null ? state.OpenCard is { Blind: true } : Session.Given is { Blind: true };
        TrialCard? card = Session.Analysis?.Card ?? state.OpenCard?.Card;
        OutingDraft planned = TypedOuting.OfCard(card, chosen.Paddler, chosen.Hull, chosen.Paddle, Session.Today, blind);
        TypedOuting mine = NewOf(planned);
        mine.Plan(planned);
        if (_typed is null || (_typed.Logged is null && _typed != mine))
            _typed = mine;
        Session.HalfTyped = mine.IsTouched;
        _form.Show(_typed, _context!);
    }

    protected override void Paint(Brush brush)
    {
    }

    private TypedOuting NewOf(OutingDraft planned)
    {
        if (!_new.TryGetValue(_paddler, out TypedOuting? typed))
            _new[_paddler] = typed = new TypedOuting(planned);
        return typed;
    }

    private void TakeKept(LogState state)
    {
        if (_typed?.Draft.Paddler != _paddler)
            _typed = null;
        if (state.Draft is { } draft && !_new.ContainsKey(_paddler))
            NewOf(TypedOuting.OfCard(state.OpenCard?.Card, Session.Chosen!.Paddler, Session.Chosen.Hull, Session.Chosen.Paddle,
                Session.Today, state.OpenCard is { Blind: true })).Resume(draft);
        foreach (ChangeDraft change in state.Changes)
        {
            if (change.Draft.Editing is not { } id || _changes.ContainsKey(id)
                || state.Outings.FirstOrDefault(outing => outing.Id == id) is not { } logged)
                continue;
            var typed = new TypedOuting(change.Start, logged, change.Print);
            typed.Resume(change.Draft);
            _changes[id] = typed;
        }
    }

    private void SaveDraft()
    {
        if (_typed is not { } typed)
            return;
        OutingDraft draft = typed.Draft;
        Guid paddler = _paddler;
        if (typed.Logged is { } logged)
        {
            var change = new ChangeDraft(draft, typed.Start, typed.Print);
            bool touched = typed.IsTouched;
            Session.PutLatest($"change:{logged.Id}", _ =>
            {
                if (touched)
                    _kept.Keep(change);
                else
                    _kept.DropChange(paddler, logged.Id);
            });
        }
        else
        {
            Session.HalfTyped = typed.IsTouched;
            Session.PutLatest($"new:{paddler}", _ => _kept.Keep(draft));
        }
    }

    private void Then(Func<TypedOuting, Spot> change)
    {
        if (_typed is not { } typed)
            return;
        Spot spot = change(typed);
        _form.Show(typed, _context!);
        _form.GoTo(spot);
        SaveDraft();
    }

    private void Step(Func<TypedOuting, Spot?> step, string none)
    {
        if (_typed is not { } typed)
            return;
        if (step(typed) is { } spot)
            Then(_ => spot);
        else
            Session.Shell.Say(none);
    }

    private void DropPiece()
    {
        int piece = _form.Here.Piece;
        if (piece < 0 || _typed!.Draft.Pieces.Count == 1)
        {
            Session.Shell.Say(piece < 0 ? "Go to the piece first." : "An outing has at least one piece.", Tone.Problem);
            return;
        }

        Then(typed => typed.DropPiece(piece));
        Session.Shell.Say($"Dropped piece {piece + 1}. Ctrl+Z brings it back.", Tone.Now);
    }

    private void AskToClear() => Session.Shell.Lay(new ChoiceSheet(
        Look, Session.Shell, Changing ? "Forget this change and keep the outing as it is in the log?"
            : "Clear what you typed of this outing?",
        ["no, go on typing", "yes; Ctrl+Z brings it back until you quit"], 0, picked =>
        {
            if (picked != 1)
                return;
            Then(typed =>
            {
                typed.Clear();
                return new Spot(OutingPart.Time, 0);
            });
        }));

    private void Leave()
    {
        bool changing = Changing;
        TypeNew();
        Session.Shell.Open(changing ? Place.Logbook : Place.NextOuting);
    }

    private void Save()
    {
        if (_typed is not { } typed)
            return;
        _form.Demanding = true;
        (OutingEntry? entry, Spot wrong, string problem) = typed.Read(_context!);
        if (entry is null)
        {
            _form.GoTo(wrong);
            Session.Shell.Say(problem, Tone.Problem);
        }
        else if (typed.Logged is { } logged)
        {
            SaveChange(typed, logged, entry, over: false);
        }
        else
        {
            Guid paddler = _paddler;
            Session.Change(workspace =>
                {
                    Outing saved = LogOuting.Save(workspace, entry);
                    _kept.DropNew(paddler);
                    return (saved, OutingDoubts.Of(workspace, saved));
                },
                saved =>
                {
                    _new.Remove(paddler);
                    Saved(saved.saved, saved.Item2, Place.NextOuting);
                });
        }
    }

    private void SaveChange(TypedOuting typed, Outing before, OutingEntry entry, bool over)
    {
        Guid paddler = _paddler;
        Guid?[] pieces = [.. typed.Draft.Pieces.Select(piece => piece.Piece)];
        Session.Change(workspace =>
            {
                Outing? saved = null;
                bool theirs = false;
                try
                {
                    workspace.Logbook.Provided(
                        () =>
                        {
                            theirs = !over && OutingPrint.Of(workspace, before) is var now && now != typed.Print && now != OutingPrint.Gone;
                            if (theirs)
                                throw OutingPrint.ChangedElsewhere(before);
                        },
                        () => saved = EditedOuting.Save(workspace, before.Id, entry, pieces));
                }
                catch (RequestException) when (theirs)
                {
                    return (null, (IReadOnlyList<string>)[]);
                }

                _kept.DropChange(paddler, before.Id);
                return (saved, OutingDoubts.Of(workspace, saved!, before));
            },
            outcome =>
            {
                if (outcome.Item1 is { } saved)
                {
                    _changes.Remove(before.Id);
                    TypeNew();
                    Saved(saved, outcome.Item2, Place.Logbook);
                }
                else
                {
                    AskOver(typed, before, entry);
                }
            });
    }

    // Somebody else changed the outing since this change was begun: neither is put over the other unasked.
    private void AskOver(TypedOuting typed, Outing before, OutingEntry entry) => Session.Shell.Lay(new ChoiceSheet(
        Look, Session.Shell, $"The outing of {before.Date:yyyy-MM-dd} was changed elsewhere while you typed. Save yours over it?",
        ["go on typing, nothing is saved", "look at theirs; yours stays as a draft", "save mine over theirs"], 0, picked =>
        {
            if (picked == 1)
                Session.Shell.Open(Place.Logbook);
            else if (picked == 2)
                SaveChange(typed, before, entry, over: true);
        }));

    private void Saved(Outing saved, IReadOnlyList<string> doubts, Place then)
    {
        (_form.Demanding, _typed) = (false, null);
        Session.HalfTyped = false;
        Session.Shell.Open(then);
        if (doubts.Count > 0)
            Session.Shell.Say($"Saved. {doubts[0]}", Tone.Caution);
        else
            Session.Shell.Say($"Saved the outing of {saved.Date:yyyy-MM-dd}. In the logbook, u undoes it.", Tone.Best);
    }
}
