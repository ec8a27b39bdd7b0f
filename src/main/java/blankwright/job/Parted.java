package blankwright.job;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.ChosenCut;
import blankwright.mesh.cut.CutToDisk;
import blankwright.mesh.cut.SeamPaths;
import blankwright.mesh.cut.UnfitSeam;
import blankwright.mesh.repair.Component;
import blankwright.mesh.repair.Components;
import blankwright.mesh.repair.MidSurface;
import blankwright.mesh.repair.TwoFaces;
import blankwright.num.Progress;
import blankwright.num.Sentence;
import blankwright.num.Share;
import blankwright.project.Face;
import blankwright.project.Recipe;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The panel on the middle of its sheet, in parts that can be laid flat.
 *
 * @param parts one for each piece of the blank, largest form first
 */
record Parted(List<Part> parts, List<Finding> findings) {
    Parted {
        parts = List.copyOf(parts);
        findings = List.copyOf(findings);
    }

    /** @throws Refusal where a seam of the recipe does not lie on the panel */
    static Parted of(TriMesh whole, Recipe recipe, Given given, Progress progress) throws Refusal {
        return new Making(whole, recipe, given, progress).run();
    }

    /** How far the form given is moved along its normals to the middle of the sheet, mm: an outside face goes in, an inside face out. */
    static double toMiddle(Face face, OptionalDouble thickness) {
        if (face == Face.MIDDLE) return 0;
        double half = thickness.orElseThrow() / 2;
        return face == Face.OUTSIDE ? -half : half;
    }

    private static final class Making {
        private final TriMesh whole;
        private final Recipe recipe;
        private final Given given;
        private final Progress progress;
        private final List<Finding> findings = new ArrayList<>();
        private final List<Part> parts = new ArrayList<>();

        Making(TriMesh whole, Recipe recipe, Given given, Progress progress) {
            this.whole = whole;
            this.recipe = recipe;
            this.given = given;
            this.progress = progress;
        }

        Parted run() throws Refusal {
            Components.Kept kept = Components.worthKeeping(Components.of(whole));
            findings.addAll(kept.findings());
            List<Component> components = kept.pieces();
            if (components.size() > 1)
                findings.add(new Finding(Finding.Kind.SEVERAL_COMPONENTS, components.size(),
                        components.size() + " separate parts; each becomes a piece of the blank."));
            TwoFaces.seen(components).ifPresent(findings::add);
            List<int[]> chosen = chosen(whole);
            List<Finding> seams = new ArrayList<>();
            for (int i = 0; i < components.size(); i++) {
                Component component = components.get(i);
                TriMesh middle = toMiddle(component.mesh());
                Progress share = new Share(progress, (double) i / components.size(), (i + 1.0) / components.size());
                List<ChosenCut.Numbered> here = within(component, chosen);
                if (here.isEmpty()) {
                    parts.add(new Part(component, CutToDisk.of(middle, share)));
                    continue;
                }
                ChosenCut cut = ChosenCut.along(middle, here);
                seams.addAll(cut.findings());
                for (Component part : Components.of(cut.mesh()))
                    parts.add(new Part(component, cut.part(CutToDisk.of(part.mesh(), share), part::vertexOf, part::triangleOf)));
            }
            findings.addAll(seams);
            for (int i = 0; i < chosen.size(); i++)
                if (chosen.get(i) != null) throw new Refusal(given.name() + ": seam " + (i + 1) + ": lies on a crumb that is left out; draw it on the panel.");
            if (!chosen.isEmpty()) parts.sort(Comparator.comparingDouble((Part part) -> part.opened().mesh().area()).reversed());
            for (Part part : parts) findings.addAll(part.opened().findings());
            return new Parted(parts, findings);
        }

        /** The recipe's seams as paths on the form as it was given. */
        private List<int[]> chosen(TriMesh form) throws Refusal {
            if (recipe.seams().isEmpty()) return new ArrayList<>();
            try {
                return SeamPaths.on(form).of(recipe.seams());
            } catch (UnfitSeam e) {
                throw new Refusal(Sentence.say("%s: %s.", given.name(), e.words()));
            }
        }

        /** The paths that lie on this component, with its own numbers; each is taken out of the list, null in its place. */
        private static List<ChosenCut.Numbered> within(Component component, List<int[]> paths) {
            Map<Integer, Integer> here = new HashMap<>();
            if (!paths.isEmpty()) for (int v = 0; v < component.mesh().vertexCount(); v++) here.put(component.vertexOf(v), v);
            List<ChosenCut.Numbered> found = new ArrayList<>();
            for (int i = 0; i < paths.size(); i++) {
                if (paths.get(i) == null || !here.containsKey(paths.get(i)[0])) continue;
                found.add(new ChosenCut.Numbered(i + 1, Arrays.stream(paths.get(i)).map(here::get).toArray()));
                paths.set(i, null);
            }
            return found;
        }

        private TriMesh toMiddle(TriMesh mesh) {
            double offset = Parted.toMiddle(recipe.face(), recipe.thickness());
            if (offset == 0) return mesh;
            MidSurface.Moved moved = MidSurface.moved(mesh, offset);
            findings.addAll(moved.findings());
            return moved.mesh();
        }
    }
}
